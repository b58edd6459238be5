// Small users of the installed package: what check-package.js and check-nodes.js run.
import { execFile } from "node:child_process";
import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { promisify } from "node:util";

export const PROJECT = join(import.meta.dirname, "../..");

const start = promisify(execFile);

/** @returns standard output; throws with all that was printed when the exit code isn't `expectedCode` */
export async function run(command, args, cwd, expectedCode = 0) {
  const {
    code = 0,
    stdout,
    stderr,
  } = await start(command, args, { cwd, maxBuffer: 2 ** 26 }).catch((error) => error);
  if (code !== expectedCode)
    throw new Error(`${command} ${args.join(" ")}: exit code ${code}\n${stdout ?? ""}${stderr ?? ""}`);
  return stdout;
}

/** @returns the tarball, and the names of the files in it */
export async function pack(folder) {
  const [{ filename, files }] = JSON.parse(
    await run("npm", ["pack", "--json", "--ignore-scripts", "--pack-destination", folder], PROJECT),
  );
  return { tarball: join(folder, filename), names: files.map(({ path }) => path) };
}

/** @returns every door of the package, and those that are code */
export async function packageDoors() {
  const { exports } = JSON.parse(await readFile(join(PROJECT, "package.json"), "utf8"));
  const doors = Object.keys(exports).map((door) => door.replace(/^\./, "stillband"));
  return { doors, code: doors.filter((door) => !door.endsWith(".json")) };
}

const LOSS = "stillband.freeSpacePathLossDb(1, 2450)";
// ITU-R P.525: 20·log10(4π·1 m·2450 MHz / c) = 40.23 dB, by hand.
const LOSS_HOLDS = `if (Math.abs(${LOSS} - 40.23) > 0.005) throw new Error("free-space loss at 1 m: " + ${LOSS});`;

/** @returns the file of a user who imports, and that of one who requires */
export async function writeCodeConsumers(folder) {
  const { doors, code } = await packageDoors();
  const imports = code.map((door) => `await import(${JSON.stringify(door)});`).join("\n");
  const requires = doors.map((door) => `require(${JSON.stringify(door)});`).join("\n");
  await writeFile(
    join(folder, "consumer.mjs"),
    `import * as stillband from "stillband";\n${LOSS_HOLDS}\n${imports}\n`,
  );
  await writeFile(
    join(folder, "consumer.cjs"),
    `const stillband = require("stillband");\n${LOSS_HOLDS}\n${requires}\n`,
  );
  return { module: "consumer.mjs", required: "consumer.cjs" };
}

const STRICT = {
  noEmit: true,
  strict: true,
  skipLibCheck: false,
  types: [],
  lib: ["es2022"],
  target: "es2022",
};

/**
 * A strict TypeScript user without Node types, who checks declarations too.
 * @returns a project file for each way to find modules
 */
export async function writeTypedConsumer(folder) {
  const { code } = await packageDoors();
  const imports = code.map(
    (door, index) => `import * as door${index} from ${JSON.stringify(door)};\nvoid door${index};`,
  );
  const use = `import { freeSpacePathLossDb } from "stillband";\nexport const lossDb: number = freeSpacePathLossDb(1, 2450);\n`;
  const wrong = `// @ts-expect-error a distance is a number\nfreeSpacePathLossDb("1", 2450);\n`;
  await writeFile(join(folder, "consumer.mts"), `${imports.join("\n")}\n${use}${wrong}`);
  const ways = [
    ["nodenext", "nodenext"],
    ["esnext", "bundler"],
  ];
  const files = ways.map(([, way]) => `tsconfig.${way}.json`);
  for (const [index, [module, moduleResolution]] of ways.entries()) {
    const compilerOptions = { ...STRICT, module, moduleResolution };
    await writeFile(join(folder, files[index]), JSON.stringify({ compilerOptions, files: ["consumer.mts"] }));
  }
  return files;
}

/** The command does its main job, and says what is missing. */
export async function useCommand(node, folder) {
  const bin = join("node_modules", "stillband", "bin", "stillband.js");
  const help = await run(node, [bin, "--help"], folder);
  if (!help.includes("channel")) throw new Error(`--help does not name the channel command:\n${help}`);
  const scan = join(PROJECT, "fixtures/scans/ropewalk-empty.csv");
  const answer = JSON.parse(await run(node, [bin, "channel", "--json", scan], folder));
  if (!Number.isInteger(answer.recommended?.channel))
    throw new Error(`channel --json recommends nothing on ${scan}`);
  await run(node, [bin, "channel", "absent.csv"], folder, 66);
  await run(node, [bin, "rooms", join(PROJECT, "fixtures/venues/ropewalk/venue.yaml"), "--json"], folder);
  return `radio ch ${answer.recommended.channel}; exit code 66 on a missing file; rooms of a venue`;
}

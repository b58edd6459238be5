import { nearestWord } from "../../radio/index.js";
import { bashCompletion } from "../completion/bash-completion.js";
import { completionCommands } from "../completion/completion-command.js";
import { fishCompletion } from "../completion/fish-completion.js";
import { zshCompletion } from "../completion/zsh-completion.js";
import { finish } from "../context.js";
import type { CommonOptions, Context } from "../context.js";
import { CliError, EXIT } from "../exit.js";
import type { ExitCode } from "../exit.js";
import { printable } from "../../issues/index.js";
import { SHELLS } from "../program.js";

const WRITERS = { bash: bashCompletion, zsh: zshCompletion, fish: fishCompletion };

/** The completion script of a shell, written from the table of commands. */
export async function runCompletion(context: Context<CommonOptions>): Promise<ExitCode> {
  const word = context.words[0] ?? "";
  const shell = SHELLS.find((known) => known === word);
  if (shell === undefined)
    throw new CliError(
      EXIT.usage,
      `completion: expected ${SHELLS.join(", ")}, got "${printable(word, 60)}"`,
      `stillband completion ${nearestWord(word, SHELLS) ?? "bash"}`,
    );
  const script = WRITERS[shell](completionCommands());
  await finish(context, {
    json: () => ({ schema: "stillband/completion@1", issues: [], shell, script }),
    text: () => script,
    issues: [],
  });
  return EXIT.ok;
}

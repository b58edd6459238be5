import { fadeLawWords, pathModelWords } from "../../propagation/index.js";
import { verifyJson, verifyText } from "../../report/index.js";
import type { VerifyReport } from "../../report/index.js";
import { finish, unitOf } from "../context.js";
import type { Context } from "../context.js";
import { EXIT } from "../exit.js";
import type { ExitCode } from "../exit.js";
import { expandFiles } from "../expand-files.js";
import { readingColumns } from "../fit-options.js";
import { fileDays, freshScans } from "../fresh-scans.js";
import type { FreshScans } from "../fresh-scans.js";
import { exitFor } from "../outcome.js";
import { plannedReceiver } from "../planned-record.js";
import { predictReceivers } from "../predict-receivers.js";
import { readingsFile } from "../readings-file.js";
import { fullTerms, venueJob } from "../venue-options.js";
import type { VenueJob } from "../venue-options.js";
import type { VenueScene } from "../venue-scene.js";
import { venueScenes } from "../venue-scenes.js";
import { systemsAsked } from "../venue-systems.js";
import { verifiedBand } from "../verify-band.js";
import type { SystemFresh } from "../verify-band.js";
import { plannedJob } from "../verify-channels.js";
import type { SystemScenes } from "../verify-channels.js";
import { verifyFindings } from "../verify-findings.js";
import { verifyFigures } from "../verify-options.js";
import type { VerifyFigures, VerifyOptions } from "../verify-options.js";
import { planFile, plannedCrowd, verifiedPlan } from "../verify-plan-file.js";
import type { PlanFile } from "../verify-plan-file.js";
import { requireNamesApart, verifiedReadings } from "../verify-readings.js";
import { verifiedWatch } from "../verify-watch.js";

/** After install: readings and fresh scans against the plan. */
export async function runVerify(context: Context<VerifyOptions>): Promise<ExitCode> {
  const { options, io, words } = context;
  const figures = verifyFigures(options);
  const earlier = figures.planPath === null ? null : await planFile(figures.planPath, io);
  const files = await expandFiles(context.files);
  const crowd = options.house ?? (earlier === null ? null : plannedCrowd(earlier.record)) ?? "full";
  const job = await venueJob(words[0]!, { ...options, crowd }, io);
  const units = unitOf({ units: options.units ?? job.loaded.venue.units });
  const own = { ...context, files, options: { ...options, map: figures.maps.scans, units } };
  const scenes = await venueScenes(own, job.loaded, systemsAsked(job.loaded.venue, undefined));
  const scene = [...scenes.values()][0]!;
  const report = await verifyReport(own, { job, scenes, scene, figures, earlier });
  await finish(own, {
    json: () => verifyJson(report),
    text: (style) => verifyText(report, style),
    issues: report.issues,
  });
  const isFailed = report.findings.some(({ severity }) => severity === "failure");
  return isFailed ? EXIT.checkFailed : exitFor(context, report.issues);
}

interface Verifying {
  readonly job: VenueJob;
  readonly scenes: SystemScenes;
  /** Any of them: for what doesn't hang on the radio. */
  readonly scene: VenueScene;
  readonly figures: VerifyFigures;
  readonly earlier: PlanFile | null;
}

async function verifyReport(
  context: Context<VerifyOptions>,
  { job, scenes, scene, figures, earlier }: Verifying,
): Promise<VerifyReport> {
  const { io, files } = context;
  const planned = plannedJob(job, scenes, earlier?.record ?? null);
  const { confidenceRatio } = figures;
  const site = scene.siteWith(job.crowd);
  const forecasts = predictReceivers(planned.links, { ...job.terms, site, confidenceRatio });
  const receivers = forecasts.map(plannedReceiver);
  const plan =
    earlier === null ? null : await verifiedPlan(earlier, job, scene, planned.asFiled, receivers, io);
  const read = figures.readingsPath === null ? null : await readingsOf(context, figures, job);
  const query = { forecasts, plan, venue: scene.venue, figures };
  const readings = read === null ? null : verifiedReadings({ ...read, ...query });
  const fresh = files.length === 0 ? null : await freshBySystem(context, scenes, job);
  const looked = {
    ...{ plan, readings },
    band: fresh === null ? null : verifiedBand(job, planned, scenes, fresh),
    watch: fresh === null ? null : verifiedWatch(job, planned, scenes, fresh),
  };
  return {
    ...looked,
    ...settingOf(job, scene),
    channels: planned.channels,
    findings: verifyFindings(looked),
    issues: [...scene.issues, ...(readings?.read.issues ?? []), ...freshIssues(fresh)],
  };
}

function settingOf(
  job: VenueJob,
  scene: VenueScene,
): Pick<VerifyReport, "venue" | "crowd" | "terms" | "words"> {
  const { crowd } = job;
  const { reliability, busyShareRatio, fadeLaw } = fullTerms(job);
  return {
    venue: scene.venue,
    crowd,
    terms: { reliability, busyShareRatio },
    words: { path: pathModelWords(scene.siteWith(crowd).pathModel), fade: fadeLawWords(fadeLaw) },
  };
}

/** What a receiver doesn't hear lies below the least sensitive radio's limit, unless it is said. */
async function readingsOf({ options, io }: Context<VerifyOptions>, figures: VerifyFigures, job: VenueJob) {
  const { venue } = job.loaded;
  requireNamesApart(venue);
  const floorDbm =
    figures.floorDbm ?? Math.max(...venue.systems.map(({ profile }) => profile.sensitivityDbm.value));
  const columns = readingColumns({ map: figures.maps.readings });
  const units = unitOf(options);
  return {
    read: await readingsFile(figures.readingsPath!, { units, floorDbm, columns }, io, READINGS),
    floorDbm,
  };
}

const READINGS =
  'a CSV with the columns receiver, received_dbm ("not heard" where there was nothing): stillband hang VENUE --sheet checks -o readings.csv writes it, and its rows link-at-trim are filled in';

/** Fresh scans as each system's radio hears them; read once for radios that listen alike. */
async function freshBySystem(
  context: Context<VerifyOptions>,
  scenes: SystemScenes,
  { loaded }: VenueJob,
): Promise<SystemFresh> {
  const days = await fileDays(context.files);
  const known = new Map<VenueScene, FreshScans>();
  const bySystem = new Map<string, FreshScans>();
  for (const [name, scene] of scenes) {
    const { profile } = scene.venue.systems.find((system) => system.name === name)!;
    const surveyed = { venue: scene.venue, scanPaths: loaded.scanPaths };
    const fresh = known.get(scene) ?? (await freshScans(context, surveyed, profile, days));
    known.set(scene, fresh);
    bySystem.set(name, fresh);
  }
  return bySystem;
}

function freshIssues(fresh: SystemFresh | null) {
  const [first] = fresh?.values() ?? [];
  return first?.imports.flatMap(({ issues }) => [...issues]) ?? [];
}

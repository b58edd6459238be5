import { sourceName } from "../report/index.js";
import type { PlanReport } from "../report/index.js";
import type { SurveyEmitter } from "../scan/index.js";

/** Letters of an address that tell two strangers apart and find neither. */
const TAIL_COUNT = 5;

/**
 * What the page calls a source of radio. The building's own, where somebody said that they are, go by their names;
 * everybody else is a neighbour with a number, or presumed the building's, unless the report shows names.
 */
export class SourceNames {
  private readonly known = new Map<string, { readonly source: SurveyEmitter; readonly number: string }>();
  private readonly own: ReadonlySet<string>;

  constructor(private readonly report: PlanReport) {
    const sources = [...report.surveys.map(({ survey }) => survey), report.rooms.survey].flatMap(
      ({ emitters }) => emitters,
    );
    let neighbourCount = 0;
    for (const source of sources)
      if (!this.known.has(source.emitter)) {
        const number = source.owner === "building" ? "" : String(++neighbourCount);
        for (const key of [source.emitter, ...source.bssids])
          if (!this.known.has(key)) this.known.set(key, { source, number });
      }
    this.own = new Set(report.rooms.venue.emitters.map(({ name }) => name));
  }

  /** Of a source of a survey, of the venue file, or of the crowd's handsets. */
  nameOf(emitter: string): string {
    const known = this.known.get(emitter) ?? this.known.get(emitter.split("@")[0]!);
    if (known !== undefined) return this.called(known.source, known.number);
    if (this.report.showsNames || this.own.has(emitter)) return emitter;
    const [handsets] = emitter.split(", ");
    return handsets!.startsWith("handsets in ") ? handsets! : "another source";
  }

  /** For the staff who are to find it: of one that is only presumed to be the building's, the address. */
  staffNameOf(emitter: string): string {
    const source = this.known.get(emitter)?.source;
    if (source === undefined || source.owner !== "building" || this.showsNameOf(source))
      return this.nameOf(emitter);
    return source.bssids[0] ?? this.nameOf(emitter);
  }

  /** Where it is loudest. */
  placeOf(emitter: string): string {
    const place = this.known.get(emitter)?.source.levelPlace ?? "";
    return place === "" ? "not said" : place;
  }

  private showsNameOf({ owner, ownerMarked }: SurveyEmitter): boolean {
    return this.report.showsNames || (owner === "building" && ownerMarked);
  }

  private called(source: SurveyEmitter, number: string): string {
    const address = source.bssids[0];
    if (this.showsNameOf(source))
      return address === undefined || source.names.length === 0
        ? sourceName(source)
        : `${sourceName(source)}, ${address}`;
    const who = source.owner === "building" ? "presumed the building's" : `neighbour ${number}`;
    return address === undefined ? who : `${who} (…${address.slice(-TAIL_COUNT)})`;
  }
}

/** The parts of the JSON that the tests reason about. */
export interface ScoreJson {
  readonly rank: number;
  readonly channel: number;
  readonly centreMhz: number;
  readonly wantedDbm: number;
  readonly marginDb: number;
  readonly interferenceDbm: number;
  readonly clearAirRatio: number;
  readonly allowed: boolean;
  readonly reason: string | null;
  readonly contributors: readonly {
    readonly emitter: string;
    readonly inChannelDbm: number;
    readonly onRatio: number;
  }[];
}

export interface IssueJson {
  readonly code: string;
  readonly severity: string;
  readonly source: string;
  readonly line?: number;
  readonly column?: string;
  readonly value?: string;
  readonly expected: string;
}

export interface SurveyJson {
  readonly emitterCount: number;
  readonly bssCount: number;
  readonly hiddenCount: number;
  readonly observationCount: number;
  readonly rejectedCount: number;
  readonly outOfBandCount: number;
  readonly ignoredCount: number;
  readonly places: readonly string[];
  readonly evidence: { readonly grade: string };
}

export interface LinkRowJson {
  readonly distanceM: number;
  readonly pathLossDb: number;
  readonly receivedDbm: number;
  readonly sensitivityMarginDb: number;
  readonly interferenceMarginDb: number;
  readonly fadeAllowanceDb: number;
  readonly workingMarginDb: number;
  readonly limit: string;
  readonly verdict: string;
  readonly caveats: readonly string[];
}

export interface FramesJson {
  readonly typical: { readonly lossRatio: number; readonly lostPerMinute: number };
  readonly edge: { readonly lossRatio: number; readonly lostPerMinute: number };
}

export interface ChannelJson {
  readonly schema: string;
  readonly issues: readonly IssueJson[];
  readonly survey: SurveyJson;
  readonly ranking: readonly ScoreJson[];
  readonly recommended: { readonly channel: number | null; readonly reason: string | null };
  readonly backup: { readonly channel: number | null; readonly reason: string | null };
  readonly hopSet: {
    readonly channels: readonly number[];
    readonly excludedRanges: readonly { readonly fromMhz: number; readonly toMhz: number }[];
    readonly clearAirRatio: number;
    readonly marginDb: number;
  } | null;
  readonly link: {
    readonly frequencyMhz: number;
    readonly rows: readonly LinkRowJson[];
    readonly reachM: number | null;
    readonly reachNoSightM: number | null;
  };
  readonly frames: FramesJson;
}

export interface SurveyCommandJson {
  readonly schema: string;
  readonly issues: readonly IssueJson[];
  readonly survey: SurveyJson;
  readonly emitters: readonly {
    readonly emitter: string;
    readonly channel: number;
    readonly bssids: readonly string[];
    readonly names: readonly string[];
    readonly levelDbm: number;
    readonly places: readonly { readonly place: string; readonly levelDbm: number }[];
    readonly firstSeen: string | null;
    readonly lastSeen: string | null;
  }[];
}

export interface ConvertJson {
  readonly issues: readonly IssueJson[];
  readonly files: readonly {
    readonly source: string;
    readonly rowCount: number;
    readonly usedCount: number;
    readonly rejectedCount: number;
    readonly outOfBandCount: number;
  }[];
  readonly readings: readonly {
    readonly source: string;
    readonly timeMs: number | null;
    readonly place: string;
    readonly crowd: string | null;
    readonly bssid: string | null;
    readonly ssid: string;
    readonly signalDbm: number;
  }[];
}

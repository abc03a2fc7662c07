/** Each time has a shape of its own, so that colour is never all that tells one from another. */
export const TRIAL_MARKS = ["circle", "square", "triangle", "diamond", "cross", "star"] as const;
export type TrialMark = (typeof TRIAL_MARKS)[number];

/** A place in a drawing. */
export interface TrialPoint {
  readonly percent: number;
  /** As the table says it: a place in a drawing is no figure. */
  readonly percentShown: string;
  readonly value: number;
}

export interface TrialSeries {
  readonly name: string;
  readonly mark: TrialMark;
  readonly points: readonly TrialPoint[];
}

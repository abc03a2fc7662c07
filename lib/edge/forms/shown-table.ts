/** What a form would come to, as a table of texts: what a browser without scripts is answered as well. */
export interface ShownTable {
  readonly says: string;
  /** The first names the row; the others stand to the right. */
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
  /** What the rows come to. */
  readonly total: readonly string[] | null;
}

/** What stands in words for a field in which nothing is written. */
export const NOTHING = "nothing";

/** The most days that a number of days may be. Apart from the fields, so that a page can ask without their library. */
export const MOST_DAYS = 3660;

/** Whether a whole number can stand where a number of days is asked for: 0 to MOST_DAYS. */
export const isDayCount = (value: number): boolean => value >= 0 && value <= MOST_DAYS;

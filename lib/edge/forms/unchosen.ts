/**
 * What is typed into a choice and is none of what can be chosen. It is sent all the same, marked: so it is refused
 * in words, never taken for nothing chosen, and stands in the field again.
 * @param field  which of two references it is sent for, where a field stands for two
 */
export const unchosen = (typed: string, field: string | null): string =>
  `${field === null ? "" : `${field} `}?${typed}`;

/** What was typed, of a value that is none of the choices; null where it is not marked so. */
export const typedOf = (value: string): string | null => /^(?:[A-Za-z]+ )?\?(.*)$/s.exec(value)?.[1] ?? null;

/** What is said of it. */
export const notInTheList = (typed: string): string =>
  `nothing in the list is called “${typed}”; choose one from the list`;

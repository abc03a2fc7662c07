/** The pages of the bench. An id may hold any character; each stands after a tilde. */
const segment = (id: string): string => `~${encodeURIComponent(id)}`;

/** A planned run before it is started. */
export const startAddress = (run: string): `/bench/start/${string}` => `/bench/start/${segment(run)}`;
/** A batch at the bench, by its run. */
export const batchAddress = (run: string): `/bench/${string}` => `/bench/${segment(run)}`;
export const sheetAddress = (run: string): `/bench/${string}/sheet` => `/bench/${segment(run)}/sheet`;
export const closeAddress = (run: string): `/bench/${string}/close` => `/bench/${segment(run)}/close`;
export const recordAddress = (run: string): `/bench/${string}/record` => `/bench/${segment(run)}/record`;
/** Where a device sends what was written down, and asks what others wrote. */
export const notesAddress = (run: string): `/bench/${string}/notes` => `/bench/${segment(run)}/notes`;
/** The label of a product, for the lot that came out of a batch. */
export const labelAddress = (label: string, lot: string): `/book/labels/${string}/print?${string}` =>
  `/book/labels/${segment(label)}/print?${new URLSearchParams({ lot }).toString()}`;

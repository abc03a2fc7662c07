/** Places on the shelf that other pages point to. An id of a file may hold any character, an anchor may not. */
export const materialAnchor = (id: string): string => `material-${encodeURIComponent(id)}`;

/** The shelf with that material open. */
export const materialAddress = (id: string): `/shelf?${string}` =>
  `/shelf?open=${encodeURIComponent(id)}#${materialAnchor(id)}`;

/** The form of a new offer, of that material already: what a pack of it costs. */
export const offerOfAddress = (id: string): `/book/offers/new?${string}` =>
  `/book/offers/new?${new URLSearchParams({ material: id }).toString()}`;

/** Finds one of a list by its id. The edge has checked every reference, so a miss is a defect and throws. */
export function byId<T extends { readonly id: string }>(what: string, list: readonly T[]): (id: string) => T {
  const found = new Map(list.map((each) => [each.id, each]));
  return (id) => {
    const each = found.get(id);
    if (each === undefined) throw new Error(`no ${what} "${id}": a reference that the edge should have refused`);
    return each;
  };
}

/** A list by a key, each group in the list's order. */
export function grouped<T>(list: Iterable<T>, keyOf: (each: T) => string): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>();
  for (const each of list) {
    const key = keyOf(each);
    const group = groups.get(key);
    if (group) group.push(each);
    else groups.set(key, [each]);
  }
  return groups;
}

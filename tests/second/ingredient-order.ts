/**
 * The order of ingredients once more, naively: whole numbers, no index, each name looked for from the start, the largest
 * picked again and again. Written from LABEL-1 to LABEL-3 and nothing of lib/domain.
 */
export interface NaiveMaterial {
  /** Micrograms of it in the product. */
  readonly mass: bigint;
  /** INCI name and parts per million. */
  readonly of: readonly (readonly [string, bigint])[];
}

/** The few entries of Annex III that the random compositions use: the label's name and what counts towards it. */
const ENTRIES: readonly (readonly string[])[] = [
  ["limonene", "d-limonene"],
  ["linalool"],
  ["citral", "geranial", "neral"],
  ["benzyl alcohol"],
];

const plain = (name: string): string =>
  name
    .split(" ")
    .filter((word) => word !== "")
    .join(" ")
    .toLowerCase();
const entryOf = (name: string): readonly string[] | undefined => ENTRIES.find((names) => names.includes(plain(name)));
const isPerfume = (name: string): boolean => plain(name) === "parfum";
const isOil = (name: string): boolean => plain(name).endsWith(" oil");

/** Plain names in order, each with its mass × 1,000,000. */
export function naiveOrder(
  materials: readonly NaiveMaterial[],
  rinsedOff: boolean,
): readonly (readonly [string, bigint])[] {
  const total = materials.reduce((sum, { mass }) => sum + mass, 0n);
  const names: string[] = [];
  const masses: bigint[] = [];
  const put = (name: string, mass: bigint): void => {
    const at = names.indexOf(plain(name));
    if (at < 0) {
      names.push(plain(name));
      masses.push(mass);
    } else masses[at] = (masses[at] ?? 0n) + mass;
  };
  const hidden = ENTRIES.map(() => 0n);
  for (const { mass, of } of materials) {
    const perfume = of.find(([name]) => isPerfume(name));
    const oils = of.filter(([name]) => isOil(name));
    const onlyPlants = of.every(([name]) => isOil(name) || entryOf(name) !== undefined);
    let home = perfume?.[0];
    if (home === undefined && onlyPlants && oils.length > 0) {
      let largest = oils[0];
      for (const oil of oils) if (largest !== undefined && oil[1] > largest[1]) largest = oil;
      home = largest?.[0];
    }
    for (const [name, ppm] of of) {
      const entry = entryOf(name);
      if (home === undefined || entry === undefined || name === home) put(name, mass * ppm);
      else {
        put(home, mass * ppm);
        const at = ENTRIES.indexOf(entry);
        hidden[at] = (hidden[at] ?? 0n) + mass * ppm;
      }
    }
  }
  const visible = [...names];
  const own = [...masses];
  ENTRIES.forEach((entry, at) => {
    const inside = hidden[at] ?? 0n;
    if (inside === 0n) return;
    let all = inside;
    visible.forEach((name, place) => {
      if (entry.includes(name)) all += own[place] ?? 0n;
    });
    // all ÷ (total × 1,000,000) above 0.001 % or 0.01 %
    const isAbove = all * (rinsedOff ? 10_000n : 100_000n) > total * 1_000_000n;
    if (isAbove || visible.includes(entry[0] ?? "")) put(entry[0] ?? "", inside);
  });
  const order: (readonly [string, bigint])[] = [];
  while (names.length > 0) {
    let best = 0;
    for (let at = 1; at < names.length; at++) {
      const [mass, most] = [masses[at] ?? 0n, masses[best] ?? 0n];
      if (mass > most || (mass === most && (names[at] ?? "") < (names[best] ?? ""))) best = at;
    }
    order.push([names[best] ?? "", masses[best] ?? 0n]);
    names.splice(best, 1);
    masses.splice(best, 1);
  }
  return order;
}

/**
 * What of a purchase goes out of date, day by day in whole numbers. It shares nothing with the projection that the
 * search goes by, so that a mistake there cannot hide here. @rule BUY-4, BUY-16
 */
import type { BasketOffer } from "./basket-problem";
import type { Keeping } from "./keeping";

type Bought = Pick<BasketOffer, "pack" | "keeps"> & { readonly packs: bigint };

interface Jar {
  readonly comes: number;
  readonly received: number;
  readonly lastUse: number;
  readonly id: string | null;
  left: bigint;
}

/** Each day: what is out of date goes, what comes is put by, what is owed and what runs take is drawn, oldest first. */
export function goneOutOfDate({ lots, draws, today, lastDay }: Keeping, bought: readonly Bought[]): bigint {
  const jars: readonly Jar[] = [
    ...lots.map((lot) => ({
      comes: lot.comes ?? today,
      received: lot.received,
      lastUse: lot.expires ?? Infinity,
      id: lot.id,
      left: lot.quantity,
    })),
    ...bought.map(({ pack, packs, keeps }) => ({
      comes: keeps?.arrives ?? today,
      received: keeps?.arrives ?? today,
      lastUse: keeps?.expires ?? Infinity,
      id: null,
      left: pack * packs,
    })),
  ].sort((a, b) => a.lastUse - b.lastUse || a.received - b.received || placeOf(a, b));
  let [owed, lost] = [0n, 0n];
  for (let day: number = today; day <= lastDay; day += 1) {
    const there = jars.filter(({ comes }) => comes <= day);
    for (const jar of there) {
      if (jar.lastUse >= day) continue;
      if (jar.id === null) lost += jar.left;
      jar.left = 0n;
    }
    owed += draws.reduce((sum, draw) => (draw.day === day ? sum + draw.need : sum), 0n);
    for (const jar of there) {
      const drawn = jar.left < owed ? jar.left : owed;
      jar.left -= drawn;
      owed -= drawn;
    }
  }
  return lost;
}

/** Of two of the same days, what was there before is drawn before what is bought. */
function placeOf(a: Jar, b: Jar): number {
  if (a.id === null || b.id === null) return (a.id === null ? 1 : 0) - (b.id === null ? 1 : 0);
  return a.id < b.id ? -1 : 1;
}

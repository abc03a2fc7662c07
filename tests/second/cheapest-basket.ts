/**
 * The least that a basket costs, by trying everything: each number of packs of each offer, material by material, and of
 * all the ways so far that bring every supplier the same goods only the first kept. No bound, no model, no solver.
 */
export interface InstanceMaterial {
  readonly id: string;
  readonly need: bigint;
  /** What is left over is worth so much for each whole step, up to so many. */
  readonly leftOver?: { readonly step: bigint; readonly worth: bigint; readonly most: bigint };
  /** Whether so many packs of its offers, in their order, may be bought; asked of each way to cover it. */
  readonly mayBuy?: (packs: readonly bigint[]) => boolean;
}

export interface Instance {
  readonly materials: readonly InstanceMaterial[];
  readonly suppliers: readonly {
    readonly id: string;
    readonly shipping: bigint;
    readonly freeFrom: bigint | null;
    readonly minimum: bigint | null;
  }[];
  readonly offers: readonly {
    readonly id: string;
    readonly material: string;
    readonly supplier: string;
    readonly pack: bigint;
    readonly price: bigint;
    readonly breaks: readonly { readonly packs: bigint; readonly price: bigint }[];
    readonly minPacks: bigint;
    readonly maxPacks: bigint | null;
  }[];
}

type InstanceOffer = Instance["offers"][number];

/** All-units price: that of the highest break reached. */
export function linePrice({ price, breaks }: InstanceOffer, packs: bigint): bigint {
  const reached = breaks.filter((step) => step.packs <= packs).sort((a, b) => (a.packs < b.packs ? 1 : -1));
  return packs * (reached[0]?.price ?? price);
}

/** More packs than these can always be fewer for less: the need, every break and every threshold are met without. */
function mostPacks(instance: Instance, offer: InstanceOffer): bigint {
  const material = instance.materials.find(({ id }) => id === offer.material);
  const { step = 0n, most: steps = 0n } = material?.leftOver ?? {};
  const need = (material?.need ?? 0n) + step * steps;
  const supplier = instance.suppliers.find(({ id }) => id === offer.supplier);
  const lowest = [offer.price, ...offer.breaks.map(({ price }) => price)].reduce((a, b) => (a < b ? a : b));
  const up = (over: bigint, under: bigint) => (over + under - 1n) / under;
  const most = [
    up(need, offer.pack),
    offer.minPacks,
    ...offer.breaks.map(({ packs }) => packs),
    up(supplier?.freeFrom ?? 0n, lowest),
    up(supplier?.minimum ?? 0n, lowest),
  ].reduce((a, b) => (a > b ? a : b));
  return offer.maxPacks !== null && offer.maxPacks < most ? offer.maxPacks : most;
}

/** Every list of packs of these offers that covers the need. */
function* waysToCover(
  instance: Instance,
  offers: readonly InstanceOffer[],
  need: bigint,
): Generator<readonly bigint[]> {
  const [first, ...others] = offers;
  if (first === undefined) {
    if (need <= 0n) yield [];
    return;
  }
  for (const rest of waysToCover(instance, others, need)) yield [0n, ...rest];
  for (let packs = first.minPacks; packs <= mostPacks(instance, first); packs += 1n) {
    for (const rest of waysToCover(instance, others, need - packs * first.pack)) yield [packs, ...rest];
  }
}

/** Goods by supplier, and the most that leftovers may be worth beside them. */
interface Reached {
  readonly goods: readonly bigint[];
  readonly worth: bigint;
}

function keepDearest(reached: Map<string, Reached>, next: Reached): void {
  const key = next.goods.join(" ");
  const before = reached.get(key);
  if (before === undefined || next.worth > before.worth) reached.set(key, next);
}

function worthLeft({ need, leftOver }: InstanceMaterial, bought: bigint): bigint {
  if (leftOver === undefined) return 0n;
  const steps = (bought - need) / leftOver.step;
  return leftOver.worth * (steps > leftOver.most ? leftOver.most : steps);
}

/**
 * The least cash less what leftovers are worth, among baskets of no more cash than the cap.
 * @returns micro-units, or null where nothing keeps every rule
 */
export function cheapestCost(instance: Instance, cap: bigint | null = null): bigint | null {
  let reached = new Map<string, Reached>([["", { goods: instance.suppliers.map(() => 0n), worth: 0n }]]);
  for (const material of instance.materials) {
    const { id, need, mayBuy } = material;
    const offers = instance.offers.filter((offer) => offer.material === id);
    const added = new Map<string, Reached>();
    for (const way of waysToCover(instance, offers, need)) {
      if (mayBuy?.(way) === false) continue;
      const goods = instance.suppliers.map((supplier) =>
        offers.reduce(
          (sum, offer, at) => (offer.supplier === supplier.id ? sum + linePrice(offer, way[at] ?? 0n) : sum),
          0n,
        ),
      );
      const bought = offers.reduce((sum, offer, at) => sum + offer.pack * (way[at] ?? 0n), 0n);
      keepDearest(added, { goods, worth: worthLeft(material, bought) });
    }
    const next = new Map<string, Reached>();
    for (const before of reached.values()) {
      for (const more of added.values()) {
        const goods = before.goods.map((sum, at) => sum + (more.goods[at] ?? 0n));
        keepDearest(next, { goods, worth: before.worth + more.worth });
      }
    }
    reached = next;
  }
  const costs = [...reached.values()].flatMap(({ goods, worth }) => {
    const cash = costWithShipping(instance, goods);
    return cash === null || (cap !== null && cash > cap) ? [] : [cash - worth];
  });
  return costs.reduce<bigint | null>((least, cost) => (least === null || cost < least ? cost : least), null);
}

function costWithShipping({ suppliers }: Instance, goods: readonly bigint[]): bigint | null {
  let cost = 0n;
  for (const [at, { shipping, freeFrom, minimum }] of suppliers.entries()) {
    const spent = goods[at] ?? 0n;
    if (spent === 0n) continue;
    if (minimum !== null && spent < minimum) return null;
    cost += spent + (freeFrom !== null && spent >= freeFrom ? 0n : shipping);
  }
  return cost;
}

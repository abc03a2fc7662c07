/**
 * Published worked examples of stock valuation, landed cost, shares and process losses, against the ledger. Money of the
 * examples is in whole units; where a book rounds a unit cost first, the exact figure stands here and the book's beside it.
 */
import { describe, expect, test } from "vitest";
import { type Fraction, roundedHalfAway, times, whole } from "@/lib/domain/fraction";
import { makeRun } from "@/lib/domain/ledger/make-run";
import { finishedLot, materialLot, wholeValue } from "@/lib/domain/ledger/posting";
import { receiveDelivery } from "@/lib/domain/ledger/receive-delivery";
import { sharedOut } from "@/lib/domain/ledger/sharing";
import { writeOff } from "@/lib/domain/ledger/stock-moves";
import { asDrawn, atMovingAverage, inAndOut } from "@/lib/domain/ledger/valuation";
import { byDrawOrder } from "@/lib/domain/lots";
import { quantity } from "@/lib/domain/quantity";
import { COIN, deliveryOf, ledgerBench, type LedgerBench, TODAY } from "../helpers/ledger-bench";
import { day, g, inGrams, money } from "../helpers/notation";

/** In ten-thousandths of the unit of money: more than any book prints. */
const tenThousandths = (amount: Fraction): number =>
  Number(roundedHalfAway(times(amount, { over: 10_000n, under: 1_000_000n }))) / 10_000;

/**
 * OpenStax, Principles of Accounting, Volume 1 (2019), sections 10.2 and 10.3: 150 at 21, 120 sold, 225 at 27, 180 sold,
 * 210 at 33. Read in the book's own source.
 */
describe("valuation of stock, Principles of Accounting 1, 10.2 and 10.3", () => {
  const PURCHASES = { A1: ["150", "3150"], A2: ["225", "6075"], A3: ["210", "6930"] } as const;
  const daysOf = { A1: "2026-11-01", A2: "2026-11-03", A3: "2026-11-05" } as const;
  const take = (bench: LedgerBench, on: string, lot: string, grams: bigint) => {
    const asked = { key: `${on} ${lot}`, day: day(on), today: TODAY, reason: null, as: "lost", from: "stock" } as const;
    const lines = [{ lot: materialLot(lot), quantity: grams }];
    bench.post(writeOff({ ...asked, lines }, bench.standing(), bench.records));
  };
  /** Draws by the draw order; without an expiry that is first in, first out. */
  const takeFirst = (bench: LedgerBench, on: string, grams: bigint) => {
    let open = grams;
    const lots = Object.keys(PURCHASES)
      .map((id) => ({ id, received: bench.records(materialLot(id))?.since, expires: null }))
      .flatMap(({ received, ...lot }) => (received === undefined ? [] : [{ ...lot, received }]));
    for (const { id } of lots.sort(byDrawOrder)) {
      const there = bench.standing().daysOf(materialLot(id), { kind: "shelf" }).at(-1)?.quantity ?? 0n;
      const taken = there < open ? there : open;
      if (taken > 0n) take(bench, on, id, taken);
      open -= taken;
    }
  };
  const received = (bench: LedgerBench, lot: keyof typeof PURCHASES) => {
    bench.receive(daysOf[lot], { [lot]: PURCHASES[lot] });
  };

  const firstIn = ledgerBench();
  received(firstIn, "A1");
  takeFirst(firstIn, "2026-11-02", g("120"));
  received(firstIn, "A2");
  takeFirst(firstIn, "2026-11-04", g("180"));
  received(firstIn, "A3");
  const moves = inAndOut(firstIn.posted, () => true);

  test("[LEDGER-18] first in, first out: 7,200 used and 8,955 left", () => {
    const { used, left } = asDrawn(moves);
    expect([tenThousandths(used), tenThousandths(left)]).toEqual([7200, 8955]);
  });

  test("[LEDGER-18] moving average: 7,252.9412 used and 8,902.0588 left (printed 7,253 and 8,902)", () => {
    const { used, left } = atMovingAverage(moves);
    expect([tenThousandths(used), tenThousandths(left)]).toEqual([7252.9412, 8902.0588]);
  });

  test("[LEDGER-18] the average after the second purchase is 26.2941, and 31.2353 in the end", () => {
    const upTo = (count: number) => atMovingAverage(moves.slice(0, count));
    const average = ({ left, quantity: grams }: ReturnType<typeof upTo>) =>
      tenThousandths(times(left, { over: 1_000_000n, under: grams }));
    expect([average(upTo(3)), average(upTo(moves.length))]).toEqual([26.2941, 31.2353]);
  });

  test("[LEDGER-18] specific lots, chosen by the maker: 7,260 used and 8,895 left", () => {
    const chosen = ledgerBench();
    received(chosen, "A1");
    take(chosen, "2026-11-02", "A1", g("120"));
    received(chosen, "A2");
    take(chosen, "2026-11-04", "A1", g("20"));
    take(chosen, "2026-11-04", "A2", g("160"));
    received(chosen, "A3");
    const { used, left } = asDrawn(inAndOut(chosen.posted, () => true));
    expect([tenThousandths(used), tenThousandths(left)]).toEqual([7260, 8895]);
    expect(["A1", "A2", "A3"].map((lot) => chosen.stands(lot, "shelf"))).toEqual([
      "10 for 210",
      "65 for 1755",
      "210 for 6930",
    ]);
  });
});

/** Apportionment of 60 seats over the fifteen states of 1790; read in an encyclopaedia of voting methods (Electowiki, "Hamilton method"). */
test("[LEDGER-6] largest remainder: sixty seats over fifteen states", () => {
  const people = [
    630_560, 475_327, 432_879, 353_523, 331_589, 278_514, 236_841, 206_236, 179_570, 141_822, 85_533, 70_835, 68_705,
    68_446, 55_540,
  ];
  expect(sharedOut(60n, people.map(BigInt)).map(Number)).toEqual([11, 8, 7, 6, 6, 5, 4, 3, 3, 2, 1, 1, 1, 1, 1]);
});

/** Ten seats for 100,000 votes: the usual example of the method, from memory. */
test("[LEDGER-6] largest remainder: ten seats for six parties", () => {
  const votes = [47_000n, 16_000n, 15_900n, 12_000n, 6_000n, 3_100n];
  expect(sharedOut(10n, votes)).toEqual([5n, 2n, 1n, 1n, 1n, 0n]);
});

/**
 * IAS 2, Inventories, paragraphs 10 and 11: import duty, transport and handling are part of what stock cost (read as
 * quoted in a guide to the standard, not in the standard). How they are shared over the lines it does not say: in
 * proportion to what was paid, to packs or to weight is common practice, no source; the figures are worked by hand.
 */
test("[LEDGER-9] landed cost by value, and by weight", () => {
  const shared = (by: "value" | "weight") => {
    const extras = [{ what: "duty", amount: money("60"), by }] as const;
    const delivery = deliveryOf("2026-11-02", { X1: ["100", "90"], Y1: ["500", "30"] }, { extras });
    const result = receiveDelivery(delivery, () => null, COIN);
    return result.kind === "posted" && result.lots.map(({ shares }) => inGrams(shares[0] ?? 0n));
  };
  expect([shared("value"), shared("weight")]).toEqual([
    ["45", "15"],
    ["10", "50"],
  ]);
});

/**
 * IAS 2, Inventories, paragraph 16(a): abnormal amounts of wasted materials, labour or other production costs are not
 * part of what stock cost (read as quoted by others, not in the standard). That abnormal loss is valued like a good
 * unit, at the cost over the output that was expected, is common practice, no source: no open textbook with a worked
 * example was found. The figures are worked by hand.
 */
describe("process costing: normal loss carries no cost, abnormal loss carries the cost of a good unit", () => {
  /** Grams go in, and every unit of output holds one gram: what the plan loses is the rest. */
  const process = (input: string, cost: string, planned: bigint, output: bigint, conversion = "0") => {
    const bench = ledgerBench();
    bench.receive("2026-11-02", { A1: [input, cost] });
    const result = makeRun(
      {
        key: "process",
        run: "r",
        day: TODAY,
        today: TODAY,
        note: null,
        unitsPlanned: quantity(planned),
        unitsMade: quantity(output),
        finishedLot: "F1",
        ofMaterial: null,
        draws: [{ lot: "A1", quantity: g(input), spilt: 0n }],
        outOfDate: "refuse",
        before: [],
        onHold: false,
        labour: money(conversion),
        overhead: money("0"),
      },
      bench.standing(),
      [{ material: "A", need: g(input), ofNeed: g(input) - planned * 1_000_000n }],
      bench.records,
    );
    bench.post(result);
    bench.know(finishedLot("F1"), { since: TODAY, expires: null, item: "p" });
    if (result.kind !== "posted") throw new Error(result.kind);
    return { bench, finished: wholeValue(result.finished), lost: wholeValue(result.lost) };
  };

  /** 5,400 over the 1,080 that were expected is 5 each. */
  test("[LEDGER-12] [LEDGER-11] 1,200 for 5,400 with 10 % normal loss: 1,050 out are 5,250, 30 abnormally lost 150", () => {
    const { bench, finished, lost } = process("1200", "5400", 1080n, 1050n);
    expect([inGrams(finished), inGrams(lost)]).toEqual(["5250", "150"]);
    expect(bench.stands("A1", "lost")).toBe("120 for 0");
  });

  /** Common practice would value 1,100 at 5 each and book a gain of 100. Here none is booked, so that nothing appears. */
  test("[LEDGER-12] more than planned shares the same cost", () => {
    const { finished, lost } = process("1200", "5400", 1080n, 1100n);
    expect([inGrams(finished), inGrams(lost)]).toEqual(["5400", "0"]);
  });

  /** 500 kg for 6,000 and 4,000 of labour and overhead, 10 % normal loss, 450 kg out. */
  test("[LEDGER-11] normal loss alone: 450 kg carry all of 10,000", () => {
    const { bench, finished, lost } = process("500", "6000", 450n, 450n, "4000");
    expect([inGrams(finished), inGrams(lost), bench.stands("F1", "finished")]).toEqual(["10000", "0", "450 for 10000"]);
  });
});

/** Every posting of double entry sums to nothing: whole(0) for each kind. Pacioli, Summa de arithmetica (1494); from memory. */
test("[LEDGER-1] [LEDGER-2] the whole ledger sums to nothing over all its places", () => {
  const bench = ledgerBench();
  bench.receive("2026-11-02", { A1: ["150", "3150"], B1: ["10", "1"] });
  const entries = bench.posted.flatMap((posting) => posting.entries);
  expect(whole(entries.reduce((sum, { value }) => sum + wholeValue(value), 0n))).toEqual(whole(0n));
  expect(entries.reduce((sum, { quantity: moved }) => sum + moved, 0n)).toBe(0n);
});

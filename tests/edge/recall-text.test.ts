import { describe, expect, test } from "vitest";
import { finishedLot, materialLot } from "@/lib/domain/ledger/posting";
import { type Recall, recallOfMaterial } from "@/lib/domain/ledger/recall";
import type { TraceForward } from "@/lib/domain/ledger/trace";
import { lotNamedBy, recallAddress } from "@/lib/edge/ledger-address";
import { recallCsv } from "@/lib/edge/recall-text";

/** 1000 g came: 200 on the shelf, 50 written off, 750 in three batches, of which one is open and one was made ahead. */
const TRACE: TraceForward = {
  came: 1_000_000_000n,
  places: [
    { place: "lost", quantity: 50_000_000n },
    { place: "shelf", quantity: 200_000_000n },
  ],
  batches: [
    {
      run: "r1",
      taken: 500_000_000n,
      lostWithinPlan: 20_000_000n,
      finished: {
        lot: "F1",
        units: [
          { place: "finished", units: 4n, holding: 160_000_000n },
          { place: "sold", units: 8n, holding: 320_000_000n },
        ],
      },
      through: null,
    },
    { run: "r2", taken: 150_000_000n, lostWithinPlan: 0n, finished: null, through: null },
    {
      run: "r3",
      taken: 100_000_000n,
      lostWithinPlan: 0n,
      finished: null,
      through: {
        lot: "P1",
        places: [{ place: "shelf", quantity: 10n, holding: 60_000_000n }],
        batches: [
          {
            run: "r4",
            taken: 40_000_000n,
            lostWithinPlan: 0n,
            finished: { lot: "F2", units: [{ place: "sold", units: 1n, holding: 40_000_000n }] },
            through: null,
          },
        ],
      },
    },
  ],
  unaccounted: 0n,
};
const LOT = materialLot("=L1");
const NAMES = new Map([
  ["=L1", "Oil, cold-pressed"],
  ["F1", 'Balm "θ"'],
  ["F2", "@Cream"],
  ["P1", "Premix"],
]);
const csv = (recall: Recall) =>
  recallCsv({ recall, nameOf: ({ id }) => NAMES.get(id) ?? "", measure: "mass" }).split("\r\n");

describe("the lines", () => {
  const recall = recallOfMaterial(LOT, TRACE);

  test("[RECALL-1] every place in turn, what was lost in making, what was made ahead followed through", () => {
    const said = recall.lines.map(({ into, run, place, units }) => [into?.id ?? "", run ?? "", place, units]);
    expect(said).toEqual([
      ["", "", "lost", null],
      ["", "", "shelf", null],
      ["F1", "r1", "finished", 4n],
      ["F1", "r1", "sold", 8n],
      ["", "r1", "lost within plan", null],
      ["", "r2", "batch", null],
      ["P1", "r3", "shelf", null],
      ["F2", "r4", "sold", 1n],
    ]);
  });

  test("[RECALL-1] all of it is accounted for; what is missing shows in the share", () => {
    expect(recall.accounted).toBe(recall.came);
    const short = recallOfMaterial(LOT, { ...TRACE, places: TRACE.places.slice(1) });
    expect(Number(short.share.over) / Number(short.share.under)).toBe(0.95);
    const nothing = recallOfMaterial(LOT, { came: 0n, places: [], batches: [], unaccounted: 0n });
    expect(nothing.share).toEqual({ over: 1n, under: 1n });
  });
});

describe("as rows", () => {
  const rows = csv(recallOfMaterial(LOT, TRACE));

  test("[RECALL-2] quoted by RFC 4180; what a spreadsheet would take for a formula is text", () => {
    expect(rows[3]).toBe(`'=L1,"Oil, cold-pressed",F1,"Balm ""θ""",r1,in stock,4,160.000000,g,16`);
    expect(rows[8]).toBe(`'=L1,"Oil, cold-pressed",F2,'@Cream,r4,sold,1,40.000000,g,4`);
  });

  test("[RECALL-2] a head, a row for each line, what is accounted for and all that came", () => {
    expect(rows).toHaveLength(1 + 8 + 2 + 1);
    expect(rows[0]).toBe(
      "Lot,Material or product,Went into lot,Material or product made,Run,Where,Units,Holds of the lot,Unit,Percent of the lot",
    );
    expect(rows.slice(-3)).toEqual([
      `'=L1,"Oil, cold-pressed",,,,accounted for,,1000.000000,g,100`,
      `'=L1,"Oil, cold-pressed",,,,all that came,,1000.000000,g,100`,
      "",
    ]);
  });
});

test("[RECALL-1] the address of a recall names its lot, whatever its id holds", () => {
  for (const lot of [materialLot("a/1 & b"), finishedLot("material:x"), materialLot("..")]) {
    const asked = new URL(recallAddress(lot), "http://stillroom.example").searchParams.get("lot");
    expect(lotNamedBy(asked)).toEqual(lot);
  }
  expect([null, "", "lot", "material:", "other:x", ["material:a"]].map(lotNamedBy)).toEqual([
    null,
    null,
    null,
    null,
    null,
    null,
  ]);
});

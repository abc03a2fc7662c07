/** What a posting is said to have done. The lots and amounts are invented. */
import { describe, expect, test } from "vitest";
import type { CurrencyCode } from "@/lib/domain/money";
import { at, materialLot, NO_VALUE, type PlaceKind, type PostingKind } from "@/lib/domain/ledger/posting";
import { movedInWords } from "@/lib/edge/posting-sentence";
import { g } from "@/tests/helpers/notation";

const words = () => ({ name: "Glycerin", shown: (held: bigint) => `${(held / 1_000_000n).toString()} g`, href: "/" });

type Simple = Exclude<PlaceKind, "batch">;
const moved = (kind: PostingKind, from: Simple, to: Simple): string =>
  movedInWords(
    {
      kind,
      entries: [
        { lot: materialLot("L1"), place: at(from), quantity: g("-20"), value: NO_VALUE },
        { lot: materialLot("L1"), place: at(to), quantity: g("20"), value: NO_VALUE },
      ],
    } as unknown as Parameters<typeof movedInWords>[0],
    words as never,
    "GBP" as CurrencyCode,
  );

describe("[LEDGER-2] what a posting did, in a sentence", () => {
  test.each([
    ["written off", "shelf", "lost", "20 g of Glycerin was lost."],
    ["held", "shelf", "hold", "20 g of Glycerin was put on hold."],
    ["taken back", "shelf", "supplier", "20 g of Glycerin went back to the supplier."],
    ["counted", "counted", "shelf", "20 g of Glycerin was found at the count."],
    ["counted", "shelf", "counted", "20 g of Glycerin was missing at the count."],
    // What puts another right went nowhere: nothing was sent back, and nothing was missing.
    ["correction", "shelf", "supplier", ""],
    ["reversal", "shelf", "counted", ""],
  ] as const)("%s from %s to %s", (kind, from, to, said) => {
    expect(moved(kind, from, to)).toBe(said);
  });
});

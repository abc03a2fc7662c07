/** The places of the app and the sizes and schemes in which each must hold. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { PROJECT } from "./server";

const demo = JSON.parse(readFileSync(join(PROJECT, "seed/demo-workshop.json"), "utf8")) as {
  readonly products: readonly { readonly id: string }[];
};

export interface Place {
  readonly name: string;
  readonly path: string;
}

export const PLACES: readonly Place[] = [
  { name: "today", path: "/" },
  { name: "find", path: "/find?q=oil" },
  { name: "screen", path: "/book/screen" },
  { name: "cost", path: "/cost" },
  { name: "product", path: `/cost/${encodeURIComponent(demo.products[0]?.id ?? "")}` },
  { name: "week", path: "/week" },
  { name: "shelf", path: "/shelf" },
  { name: "buying", path: "/buying" },
  { name: "bench", path: "/bench" },
  { name: "orders", path: "/buying/orders" },
  { name: "paid", path: "/buying/paid/~m-glycerin" },
  { name: "order", path: "/buying/orders/~po-1" },
  { name: "suggested", path: "/buying/suggested/~m-glycerin" },
  { name: "shelf-lot", path: "/shelf/lots/L03" },
  { name: "shelf-count", path: "/shelf/count" },
  { name: "shelf-count-due", path: "/shelf/count/due" },
  { name: "finished", path: "/shelf/finished" },
  { name: "book-history", path: "/book/history" },
  { name: "book-stock-value", path: "/book/stock-value" },
  { name: "book-batch", path: "/book/formulas/f-conditioner/batch?most=1+kg" },
  { name: "book-swap", path: "/book/formulas/f-conditioner/swap?from=m-panthenol&to=m-ipm&percent=&phase=" },
  { name: "book-versions", path: "/book/formulas/f-conditioner/versions" },
  { name: "book-trials", path: "/book/formulas/f-conditioner/trials" },
  { name: "book-new-trial", path: "/book/formulas/f-conditioner/trials/new?line=3&percent=7" },
];

/** An invented workshop with a batch that was released, with its label, and one that is open. */
export const BENCH_WORKSHOP = "tests/journeys/record-workshop.json";
/** The demo has no batch at the bench: these are looked at in that workshop. */
export const BENCH_PLACES: readonly Place[] = [
  { name: "bench-start", path: "/bench/start/~r3" },
  { name: "bench-batch", path: "/bench/~r2" },
  { name: "bench-sheet", path: "/bench/~r2/sheet" },
  { name: "bench-close", path: "/bench/~r2/close" },
  { name: "bench-record", path: "/bench/~r1/record" },
  { name: "label-print", path: "/book/labels/l-plain/print?lot=PO-261125-01" },
  { name: "recall", path: "/shelf/recall?lot=material%3AL2" },
];

/** Further places, for the pictures; the book's own journey measures its pages. */
export const PICTURED: readonly Place[] = [
  ...PLACES,
  { name: "book", path: "/book" },
  { name: "book-materials", path: "/book/materials" },
  { name: "book-formula", path: "/book/formulas/f-conditioner" },
  { name: "book-product", path: "/book/products/p-conditioner" },
  { name: "book-first", path: "/book/first" },
  { name: "book-rates", path: "/book/rates" },
  { name: "book-files", path: "/book/files" },
];

/** Desk, tablet and phone: widths in CSS pixels. */
export const SIZES = [
  { width: 1280, height: 900 },
  { width: 820, height: 1180 },
  { width: 390, height: 844 },
] as const;

/** A desk's page at 200 % and at 400 %: WCAG 2.2, success criteria 1.4.4 and 1.4.10. */
export const ENLARGED = [
  { width: 640, height: 450 },
  { width: 320, height: 256 },
] as const;

export const SCHEMES = ["light", "dark"] as const;

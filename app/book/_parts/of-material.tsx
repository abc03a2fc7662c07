import Link from "next/link";
import type { ReactNode } from "react";
import type { Day } from "@/lib/domain/calendar";
import type { Books } from "@/lib/domain/desk";
import { newPath } from "./addresses";
import { RecordLedger } from "./record-ledger";
import { type Listing, listingOf } from "./record-rows";

/** What is bought and held of a material: its offers and its lots, and room for more. */
export function OfMaterial({
  books: { workshop, desk },
  today,
  material,
}: {
  readonly books: Books;
  readonly today: Day;
  readonly material: string;
}): ReactNode {
  return (["offers", "lots"] as const).map((section) => {
    const ids = new Set(workshop[section].filter((record) => record.material === material).map((record) => record.id));
    const { columns, rows } = withoutFirst(
      listingOf(section, workshop, today, new Set(section === "offers" ? desk.retired.offers : [])),
    );
    const words = WORDS[section];
    return (
      <section className="block" key={section} aria-labelledby={`its-${section}`}>
        <h2 id={`its-${section}`}>{ids.size === 0 ? words.none : words.some}</h2>
        <RecordLedger
          section={section}
          columns={columns}
          rows={rows.filter(({ id }) => ids.has(id))}
          kept=""
          sought=""
        />
        <p className="foot">
          <Link className="button" href={newPath(section, { material })}>
            {words.add}
          </Link>
        </p>
      </section>
    );
  });
}

/** The material itself need not be said of each: what comes after it names the row. */
const withoutFirst = ({ columns, rows }: Listing): Listing => ({
  columns: columns.slice(1),
  rows: rows.map((row) => ({ ...row, name: row.cells[0] ?? "", cells: row.cells.slice(1) })),
});

const WORDS = {
  offers: { some: "Its offers", none: "Nobody offers it yet", add: "Add an offer of it" },
  lots: { some: "Its lots", none: "None of it is on the shelf", add: "Add a lot of it" },
} as const;

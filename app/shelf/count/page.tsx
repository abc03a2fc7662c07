import type { Metadata } from "next";
import Link from "next/link";
import { redirect } from "next/navigation";
import type { ReactNode } from "react";
import { Choice } from "@/app/_ui/choice";
import { Opening } from "@/app/_ui/finding";
import { newId } from "@/app/_ui/new-id";
import { countsDue } from "@/app/counts-due-for-page";
import { readOnce } from "@/app/plan-for-page";
import { type Day, isoDate } from "@/lib/domain/calendar";
import type { Books } from "@/lib/domain/desk";
import type { Lot, Workshop } from "@/lib/domain/workshop";
import { counted } from "@/lib/edge/counted";
import { dayShown, stockInFull } from "@/lib/edge/figures";
import { realToday } from "@/lib/edge/real-today";
import { CountForm, type CountedLot } from "../_parts/count-form";
import { ShelfCrumb } from "../_parts/shelf-crumb";
import { countTheShelf } from "./actions";
import "../shelf.css";

export const metadata: Metadata = { title: "Count the shelf" };

type Search = Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;

const ASKED = ["left", "due", "all"] as const;
type Asked = (typeof ASKED)[number];

const NOTHING: Readonly<Record<Asked, string>> = {
  left: "Nothing is on the shelf to be counted.",
  due: "Nothing that is due for a count is on the shelf.",
  all: "Nothing is on the shelf to be counted.",
};

/** What the scale says of some or all lots takes the place of what was written down, as one posting. */
export default async function CountPage({ searchParams }: { readonly searchParams: Search }): Promise<ReactNode> {
  const [books, parameters] = await Promise.all([readOnce(), searchParams]);
  if (!books) redirect("/");
  const { workshop } = books;
  const today = workshop.settings.today ?? realToday();
  const asked = ASKED.find((each) => each === parameters.lots) ?? "left";
  const lots = await lotsAsked(books, today, asked);
  return (
    <>
      <Opening
        crumb={<ShelfCrumb />}
        title="Count the shelf"
        beside={
          <Choice
            name="Lots"
            options={[
              { href: "/shelf/count", label: "With something left", chosen: asked === "left" },
              { href: "/shelf/count?lots=due", label: "Due for a count", chosen: asked === "due" },
              { href: "/shelf/count?lots=all", label: "All", chosen: asked === "all" },
            ]}
          />
        }
      >
        {lots.length === 0
          ? NOTHING[asked]
          : `${counted(lots.length, "lot", "lots").replace(/^./, (first) => first.toUpperCase())} to count. Write what the scale says, with its vessel and less it, of those you weigh; what is left empty stays as it is.`}{" "}
        <Link href="/shelf/count/due">When to count</Link>
      </Opening>
      {lots.length > 0 && <CountForm key={asked} id={newId()} day={isoDate(today)} lots={lots} send={countTheShelf} />}
    </>
  );
}

async function lotsAsked(books: Books, today: Day, asked: Asked): Promise<readonly CountedLot[]> {
  if (asked !== "due") return lotsToCount(books.workshop, today, ({ remaining }) => asked === "all" || remaining > 0n);
  const due = (await countsDue(books, today)).filter(({ isDue }) => isDue);
  const materials = new Set(due.map(({ rhythm }) => rhythm.material));
  return lotsToCount(books.workshop, today, ({ material, remaining }) => materials.has(material) && remaining > 0n);
}

const IN_ORDER = new Intl.Collator("en-GB", { numeric: true, sensitivity: "base" });

function lotsToCount({ lots, materials }: Workshop, today: Day, counts: (lot: Lot) => boolean): readonly CountedLot[] {
  const materialOf = new Map(materials.map((each) => [each.id, each]));
  return lots
    .filter(counts)
    .flatMap(({ id, material, remaining, expires }) => {
      const of = materialOf.get(material);
      if (of === undefined) return [];
      return {
        lot: id,
        material: of.name,
        bestBefore: expires === null ? "" : `best before ${dayShown(expires, today, { weekday: false, year: true })}`,
        there: stockInFull(remaining, of.measure),
        expected: remaining.toString(),
        unit: of.measure === "mass" ? "g" : "pieces",
      };
    })
    .sort((a, b) => IN_ORDER.compare(a.material, b.material) || IN_ORDER.compare(a.lot, b.lot));
}

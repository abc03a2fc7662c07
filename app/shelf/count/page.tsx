import type { Metadata } from "next";
import { redirect } from "next/navigation";
import type { ReactNode } from "react";
import { Choice } from "@/app/_ui/choice";
import { Opening } from "@/app/_ui/finding";
import { newId } from "@/app/_ui/new-id";
import { planForPage } from "@/app/plan-for-page";
import { type Day, isoDate } from "@/lib/domain/calendar";
import type { Workshop } from "@/lib/domain/workshop";
import { counted } from "@/lib/edge/counted";
import { dayShown, stockInFull } from "@/lib/edge/figures";
import { CountForm, type CountedLot } from "../_parts/count-form";
import { ShelfCrumb } from "../_parts/shelf-crumb";
import { countTheShelf } from "./actions";
import "../shelf.css";

export const metadata: Metadata = { title: "Count the shelf" };

type Search = Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;

/** What the scale says of some or all lots takes the place of what was written down, as one posting. */
export default async function CountPage({ searchParams }: { readonly searchParams: Search }): Promise<ReactNode> {
  const [found, asked] = await Promise.all([planForPage(), searchParams]);
  if (!found) redirect("/");
  const { workshop, today } = found;
  const all = asked.lots === "all";
  const lots = lotsToCount(workshop, today, all);
  return (
    <>
      <Opening
        crumb={<ShelfCrumb />}
        title="Count the shelf"
        beside={
          <Choice
            name="Lots"
            options={[
              { href: "/shelf/count", label: "With something left", chosen: !all },
              { href: "/shelf/count?lots=all", label: "All", chosen: all },
            ]}
          />
        }
      >
        {lots.length === 0
          ? "Nothing is on the shelf to be counted."
          : `${counted(lots.length, "lot", "lots").replace(/^./, (first) => first.toUpperCase())} to count. Write what the scale says, with its vessel and less it, of those you weigh; what is left empty stays as it is.`}
      </Opening>
      {lots.length > 0 && (
        <CountForm key={String(all)} id={newId()} day={isoDate(today)} lots={lots} send={countTheShelf} />
      )}
    </>
  );
}

const IN_ORDER = new Intl.Collator("en-GB", { numeric: true, sensitivity: "base" });

function lotsToCount({ lots, materials }: Workshop, today: Day, all: boolean): readonly CountedLot[] {
  const materialOf = new Map(materials.map((each) => [each.id, each]));
  return lots
    .filter(({ remaining }) => all || remaining > 0n)
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

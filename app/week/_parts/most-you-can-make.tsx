import Link from "next/link";
import type { ReactNode } from "react";
import { FollowedLinks } from "@/app/_ui/followed-links";
import { HowItComes } from "@/app/_ui/how-it-comes";
import type { WorkingLine } from "@/app/_ui/working";
import type { Day } from "@/lib/domain/calendar";
import type { MostFromShelf } from "@/lib/domain/most-from-shelf";
import { counted } from "@/lib/edge/counted";
import { countShown, stockInFull, stockShown } from "@/lib/edge/figures";
import { materialAddress } from "@/lib/edge/material-address";
import { unitsShown } from "./run-words";
import { weekWith } from "./week-view";

/** More products than this stand below the week, in columns; one then opens by its address. */
const BESIDE_THE_WEEK = 7;

interface Mosts {
  readonly mosts: readonly MostFromShelf[];
  readonly monday: Day;
  /** The id of the product whose working is asked for by the address. */
  readonly asked: string;
}

/** The most that the shelf allows of each product today, and how that comes about. */
export function MostYouCanMake({ mosts, monday, asked }: Mosts): ReactNode {
  if (mosts.length === 0) return null;
  const areMany = mosts.length > BESIDE_THE_WEEK;
  return (
    <section className={areMany ? "most many" : "most"}>
      <h2>Most you can make from the shelf today</h2>
      <FollowedLinks>
        <ul>
          {mosts.map((most) => (
            <li key={most.product.id} id={anchorOf(most)}>
              <b>{countShown(most.mostUnits)}</b>
              <span>
                {most.product.name}
                <small>
                  stopped by{" "}
                  <Link href={materialAddress(most.limiting.id)} prefetch={false}>
                    {most.limiting.name}
                  </Link>
                  , {stockShown(most.there, most.limiting.measure, "there")}
                </small>
                {!areMany || asked === most.product.id ? (
                  <HowItComes {...workingOf(most)} isOpen={areMany} />
                ) : (
                  <a className="how-it-comes" href={`${weekWith(monday, { most: most.product.id })}#${anchorOf(most)}`}>
                    How it comes about
                  </a>
                )}
              </span>
            </li>
          ))}
        </ul>
      </FollowedLinks>
      {mosts.length > 1 && <p className="label">Each on its own: they draw on the same shelf.</p>}
    </section>
  );
}

const anchorOf = ({ product }: MostFromShelf): string => `most-${encodeURIComponent(product.id)}`;

/** What is there, less what a run takes once, shared over the units. @rule MAKE-3 */
function workingOf({ limiting, there, lots, least, mostUnits }: MostFromShelf): {
  readonly lines: readonly WorkingLine[];
  readonly notes?: readonly ReactNode[];
} {
  const { name, measure } = limiting;
  const held: WorkingLine = {
    figure: stockInFull(there, measure),
    reason: `of ${name} on the shelf and usable today, in ${counted(lots, "lot", "lots")}`,
  };
  const result: WorkingLine = { figure: unitsShown(mostUnits), reason: "whole units", isResult: true };
  if (least === null)
    return {
      lines: [held, result],
      notes: ["What of a premix is there made ahead is taken first, so that the units are found by trying sizes."],
    };
  const { perUnit, fixed, under } = least;
  return {
    lines: [
      held,
      ...(fixed > 0n
        ? [
            {
              operator: "−" as const,
              figure: stockInFull({ over: fixed, under }, measure),
              reason: "taken once, whatever the units",
            },
          ]
        : []),
      ...(perUnit > 0n
        ? [
            {
              operator: "÷" as const,
              figure: stockInFull({ over: perUnit, under }, measure),
              reason: "for each unit, at the least",
            },
          ]
        : []),
      result,
    ],
  };
}

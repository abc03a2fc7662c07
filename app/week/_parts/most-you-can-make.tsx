import Link from "next/link";
import type { ReactNode } from "react";
import { FollowedLinks } from "@/app/_ui/followed-links";
import { HowItComes } from "@/app/_ui/how-it-comes";
import type { Day } from "@/lib/domain/calendar";
import type { MostFromShelf } from "@/lib/domain/most-from-shelf";
import { countShown, stockShown } from "@/lib/edge/figures";
import { materialAddress } from "@/lib/edge/material-address";
import { mostLines } from "./most-working";
import { weekWith } from "./week-view";

/** More products than this stand below the week, in columns, so that they make the days no longer. */
const BESIDE_THE_WEEK = 4;
/** Of more products than this one opens by its address. */
const OPENING_HERE = 7;

interface Mosts {
  readonly mosts: readonly MostFromShelf[];
  readonly monday: Day;
  readonly today: Day;
  /** The id of the product whose working is asked for by the address. */
  readonly asked: string;
}

/** The most that the shelf allows of each product today, and how that comes about. */
export function MostYouCanMake({ mosts, monday, today, asked }: Mosts): ReactNode {
  if (mosts.length === 0) return null;
  const areMany = mosts.length > OPENING_HERE;
  return (
    <section className={mosts.length > BESIDE_THE_WEEK ? "most many" : "most"}>
      <h2>Most you can make from the shelf today</h2>
      <FollowedLinks>
        <ul>
          {mosts.map((most) => (
            <li key={most.product.id} id={anchorOf(most)}>
              {!areMany || asked === most.product.id ? (
                <HowItComes
                  {...mostLines(most, today, "usable today")}
                  says={<Figure most={most} />}
                  isOpen={areMany}
                />
              ) : (
                <a className="most-link" href={`${weekWith(monday, { most: most.product.id })}#${anchorOf(most)}`}>
                  <Figure most={most} />
                </a>
              )}
              <small>
                stopped by{" "}
                <Link href={materialAddress(most.limiting.id)} prefetch={false}>
                  {most.limiting.name}
                </Link>
                , {stockShown(most.there, most.limiting.measure, "there")}
              </small>
            </li>
          ))}
        </ul>
      </FollowedLinks>
      {mosts.length > 1 && <p className="label">Each on its own: they draw on the same shelf.</p>}
    </section>
  );
}

/** So many of a product; it opens to how that comes about. */
const Figure = ({ most: { mostUnits, product } }: { readonly most: MostFromShelf }): ReactNode => (
  <>
    <b>{countShown(mostUnits)}</b> <span>{product.name}</span>
  </>
);

const anchorOf = ({ product }: MostFromShelf): string => `most-${encodeURIComponent(product.id)}`;

import Link from "next/link";
import type { ReactNode } from "react";
import type { MostFromShelf } from "@/lib/domain/most-from-shelf";
import { countShown, stockShown } from "@/lib/edge/figures";
import { materialAddress } from "@/lib/edge/material-address";

/** More products than this stand below the week, in columns. */
const BESIDE_THE_WEEK = 7;

/** The most that the shelf allows of each product today. */
export function MostYouCanMake({ mosts }: { readonly mosts: readonly MostFromShelf[] }): ReactNode {
  if (mosts.length === 0) return null;
  return (
    <section className={mosts.length > BESIDE_THE_WEEK ? "most many" : "most"}>
      <h2>Most you can make from the shelf today</h2>
      <ul>
        {mosts.map(({ product, mostUnits, limiting, there }) => (
          <li key={product.id}>
            <b>{countShown(mostUnits)}</b>
            <span>
              {product.name}
              <small>
                stopped by{" "}
                <Link href={materialAddress(limiting.id)} prefetch={false}>
                  {limiting.name}
                </Link>
                , {stockShown(there, limiting.measure, "there")}
              </small>
            </span>
          </li>
        ))}
      </ul>
      {mosts.length > 1 && <p className="label">Each on its own: they draw on the same shelf.</p>}
    </section>
  );
}

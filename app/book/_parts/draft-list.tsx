import Link from "next/link";
import type { ReactNode } from "react";
import { Sign } from "@/app/_ui/sign";
import { draftPath } from "./addresses";

export interface DraftLine {
  readonly id: string;
  readonly name: string;
  /** What it comes to and what is missing. */
  readonly total: string;
  readonly isKept: boolean;
}

/** Formulas that are not finished: they stand apart, because no product can be made by them yet. */
export const DraftList = ({ drafts }: { readonly drafts: readonly DraftLine[] }): ReactNode => (
  <section className="matters">
    <h2>
      Drafts <small>in no product yet, and in no saved file</small>
    </h2>
    <div>
      <ul>
        {drafts.map(({ id, name, total, isKept }) => (
          <li className="matter" key={id}>
            <b>
              <Link href={draftPath(id)}>{name}</Link>
            </b>
            {isKept && (
              <span role="status">
                <Sign sign="tick" tone="open">
                  kept as a draft
                </Sign>
              </span>
            )}
            <p>{total}</p>
          </li>
        ))}
      </ul>
    </div>
  </section>
);

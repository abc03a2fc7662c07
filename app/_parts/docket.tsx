import type { Route } from "next";
import Link from "next/link";
import type { ReactNode } from "react";
import { inWords } from "@/lib/edge/counted";
import { materialAddress } from "@/lib/edge/material-address";
import { ribbonAxis } from "@/lib/edge/ribbon-axis";
import { ribbonOf } from "@/lib/edge/ribbon";
import { Ribbon } from "@/app/_ui/ribbon";
import type { MaterialOutlook } from "@/lib/domain/plan-figures";
import type { Today } from "./today";

interface Parts<To extends string> {
  readonly href: Route<To>;
  readonly name: string;
  readonly sign: ReactNode;
  /** A ribbon or a bar, where the matter has one. */
  readonly strip?: ReactNode;
  /** The one thing to do. */
  readonly act: ReactNode;
  /** Why it is here. */
  readonly children: ReactNode;
  /** The arithmetic of a figure in it. */
  readonly working?: ReactNode;
}

/** One matter: what it is about, its sign, why, how it will be, and the one thing to do about it. */
export const Docket = <To extends string>({
  href,
  name,
  sign,
  strip,
  act,
  children,
  working,
}: Parts<To>): ReactNode => (
  <li className={strip === undefined ? "docket" : "docket with-strip"}>
    <div className="docket-what">
      <h3>
        <Link href={href} prefetch={false}>
          {name}
        </Link>{" "}
        {sign}
      </h3>
      <p>{children}</p>
      {working}
    </div>
    {strip !== undefined && <div className="docket-strip">{strip}</div>}
    <div className="docket-act">{act}</div>
  </li>
);

/** A material's days to come; its ribbon leads to the material and can be walked along. */
export const Strip = ({
  outlook,
  of: { today, plan },
}: {
  readonly outlook: MaterialOutlook;
  readonly of: Today;
}): ReactNode => (
  <Link className="ribbon-link" href={materialAddress(outlook.material.id)} prefetch={false}>
    <Ribbon ribbon={ribbonOf(outlook, today, plan.lastDay, "docket")} weeks={ribbonAxis(today, plan.lastDay).lines} />
  </Link>
);

interface Grouped {
  readonly name: string;
  readonly of: string;
  readonly dockets: readonly ReactNode[];
  /** Where the rest of them are. */
  readonly more: { readonly href: Route; readonly name: string };
}

/** So many of each kind are shown; the rest are one link away. */
const MOST_SHOWN = 6;

/** Matters of one kind under their name; nothing where there are none. */
export function DocketGroup({ name, of, dockets, more }: Grouped): ReactNode {
  if (dockets.length === 0) return null;
  const left = dockets.length - MOST_SHOWN;
  return (
    <section className="docket-group">
      <h2>
        {name} <small>{of}</small>
      </h2>
      <div>
        <ul>{dockets.slice(0, MOST_SHOWN)}</ul>
        {left > 0 && (
          <Link className="more" href={more.href} prefetch={false}>
            {more.name}: {inWords(left)} more
          </Link>
        )}
      </div>
    </section>
  );
}

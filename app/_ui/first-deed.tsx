import type { Route } from "next";
import Link from "next/link";
import type { ReactNode } from "react";

/** Where there is nothing yet: the one thing to do first. */
export const FirstDeed = <To extends string>({
  href,
  children,
}: {
  readonly href: Route<To>;
  readonly children: ReactNode;
}): ReactNode => (
  <p className="first-deed screen-only">
    <Link className="button first" href={href} prefetch={false}>
      {children}
    </Link>
  </p>
);

import type { Route } from "next";
import Link from "next/link";
import { type ReactNode, useId } from "react";

/** One of a few, chosen by a link: the address says what is chosen, and nothing needs a script. */
export function Choice({
  name,
  options,
}: {
  readonly name: string;
  readonly options: readonly { readonly href: Route; readonly label: string; readonly chosen: boolean }[];
}): ReactNode {
  const id = useId();
  return (
    <nav aria-labelledby={id}>
      <div className="label choice-label" id={id}>
        {name}
      </div>
      <ul className="choice">
        {options.map(({ href, label, chosen }) => (
          <li key={href}>
            <Link href={href} scroll={false} aria-current={chosen ? "true" : undefined}>
              {label}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}

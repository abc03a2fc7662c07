"use client";

import type { Route } from "next";
import Link, { useLinkStatus } from "next/link";
import { usePathname } from "next/navigation";
import type { ReactNode } from "react";

export interface Place {
  readonly href: Route;
  readonly name: string;
}

/** The places as words; the one where the reader is stands heavier, with a notch on the rule. */
export function Places({ places }: { readonly places: readonly Place[] }): ReactNode {
  const path = usePathname();
  return (
    <nav className="places" aria-label="Places">
      {places.map(({ href, name }) => (
        <Link key={href} href={href} aria-current={currentFor(path, href)}>
          {name}
          <OnItsWay />
        </Link>
      ))}
    </nav>
  );
}

function currentFor(path: string, href: string): "page" | "true" | undefined {
  if (path === href) return "page";
  return href !== "/" && path.startsWith(`${href}/`) ? "true" : undefined;
}

/** Says on the head's rule that a page is being fetched; it is seen only when that takes a while. */
function OnItsWay(): ReactNode {
  const { pending } = useLinkStatus();
  return <span className="on-its-way" data-waiting={pending ? "" : undefined} aria-hidden="true" />;
}

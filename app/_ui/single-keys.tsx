"use client";

import { usePathname, useRouter } from "next/navigation";
import { useLayoutEffect } from "react";
import { SINGLE_KEYS } from "@/lib/edge/single-keys";

/** Goes to a place by one key. Off while something is typed into or chosen from, and with any other key held. */
export function SingleKeys(): null {
  const router = useRouter();
  const isAtTheBench = usePathname().startsWith("/bench/");
  // Before the page is painted that says that they are on.
  useLayoutEffect(() => {
    // A scanner types: what it reads there is a lot, wherever the focus is.
    if (isAtTheBench) return;
    const go = (event: KeyboardEvent): void => {
      if (event.defaultPrevented || event.repeat || event.altKey || event.ctrlKey || event.metaKey) return;
      if (event.target instanceof Element && event.target.closest("input, select, textarea, [role=combobox]")) return;
      const place = SINGLE_KEYS.find(({ key }) => key === event.key);
      if (place === undefined) return;
      event.preventDefault();
      router.push(place.goes);
    };
    document.addEventListener("keydown", go);
    return () => {
      document.removeEventListener("keydown", go);
    };
  }, [router, isAtTheBench]);
  return null;
}

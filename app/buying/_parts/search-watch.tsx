"use client";

import { useRouter } from "next/navigation";
import { type ReactNode, useEffect } from "react";

/** Often enough to see it move, seldom enough to leave the search its time. */
const MILLISECONDS_BETWEEN_LOOKS = 1_000;

/** While it stands on the page, the page is looked at again and again, and the head's bar says that something goes on. */
export function SearchWatch(): ReactNode {
  const router = useRouter();
  useEffect(() => {
    const timer = setInterval(() => router.refresh(), MILLISECONDS_BETWEEN_LOOKS);
    return () => clearInterval(timer);
  }, [router]);
  return <span className="buying-bar" aria-hidden="true" />;
}

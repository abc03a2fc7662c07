"use client";

import { useRouter } from "next/navigation";
import { type ReactNode, useEffect, useTransition } from "react";

/** Often enough to see it move, seldom enough to leave the search its time. */
const MILLISECONDS_BETWEEN_LOOKS = 800;

/**
 * While it stands on the page, the page is looked at again and again, and the head's bar says that something goes on.
 * A look waits for the one before: looks that overtake one another would never be drawn.
 */
export function SearchWatch(): ReactNode {
  const router = useRouter();
  const [isLooking, startLooking] = useTransition();
  useEffect(() => {
    if (isLooking) return;
    const timer = setTimeout(() => startLooking(() => router.refresh()), MILLISECONDS_BETWEEN_LOOKS);
    return () => clearTimeout(timer);
  }, [router, isLooking]);
  return <span className="buying-bar" aria-hidden="true" />;
}

"use client";

import { useRouter } from "next/navigation";
import type { MouseEvent, ReactNode } from "react";

/**
 * Follows the plain links within as `Link` does, so that the page stays and what differs alone is drawn anew. For rows
 * that are drawn as markup: hundreds of `Link`s cost the server more than all else on their page.
 */
export const FollowedLinks = ({ children }: { readonly children: ReactNode }): ReactNode => (
  <div onClick={useFollowed()}>{children}</div>
);

export function useFollowed(): (event: MouseEvent<HTMLElement>) => void {
  const router = useRouter();
  return (event) => {
    const link = event.target instanceof Element ? event.target.closest("a") : null;
    const isPlain = event.button === 0 && !event.altKey && !event.ctrlKey && !event.metaKey && !event.shiftKey;
    // One that is a `Link` has been followed already; another window and another site are the browser's own.
    if (event.defaultPrevented || !isPlain || !link || link.target !== "" || link.origin !== location.origin) return;
    event.preventDefault();
    router.push(`${link.pathname}${link.search}${link.hash}` as Parameters<typeof router.push>[0]);
  };
}

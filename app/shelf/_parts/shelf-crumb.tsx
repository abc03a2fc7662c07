import Link from "next/link";
import type { ReactNode } from "react";

/** Where the pages below the shelf stand. */
export const ShelfCrumb = (): ReactNode => <Link href="/shelf">The shelf</Link>;

import type { Metadata } from "next";
import Link from "next/link";
import type { ReactNode } from "react";
import { Opening } from "./_ui/finding";

export const metadata: Metadata = { title: "No such page" };

export default function NotFound(): ReactNode {
  return (
    <Opening title="No such page">
      Nothing is kept under this address. It may have been in a workshop that is no longer open. Go to{" "}
      <Link href="/">the first page</Link>.
    </Opening>
  );
}

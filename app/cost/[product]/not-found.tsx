import Link from "next/link";
import type { ReactNode } from "react";
import { Opening } from "@/app/_ui/finding";

export default function NoSuchProduct(): ReactNode {
  return (
    <Opening title="No such product">
      The open workshop has no product under this address. See <Link href="/cost">all products</Link>.
    </Opening>
  );
}

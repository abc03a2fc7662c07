import Link from "next/link";
import type { ReactNode } from "react";
import { Opening } from "@/app/_ui/finding";

export default function NoSuchFinishedLot(): ReactNode {
  return (
    <Opening crumb={<Link href="/shelf/finished">Finished stock</Link>} title="No such finished lot">
      No finished lot was ever kept under this number in the open workshop. See{" "}
      <Link href="/shelf/finished">all finished lots</Link>, or <Link href="/book/history">the history</Link>.
    </Opening>
  );
}

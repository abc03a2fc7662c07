import Link from "next/link";
import type { ReactNode } from "react";
import { Opening } from "@/app/_ui/finding";
import { ShelfCrumb } from "../../_parts/shelf-crumb";

export default function NoSuchLot(): ReactNode {
  return (
    <Opening crumb={<ShelfCrumb />} title="No such lot">
      No lot of a material was ever kept under this number in the open workshop. Look for it under its material on{" "}
      <Link href="/shelf">the shelf</Link>, or in <Link href="/book/history">the history</Link>.
    </Opening>
  );
}

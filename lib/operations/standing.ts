/**
 * How what stands now compares with what a form was drawn from and with what it asks for. A form that was sent twice
 * finds it as asked; one whose value somebody has changed meanwhile must not overwrite that.
 */
export const standing = <T extends string | number | bigint | null>(
  now: T,
  { from, to }: { readonly from: T; readonly to: T },
): "as asked" | "as drawn" | "changed" => (now === to ? "as asked" : now === from ? "as drawn" : "changed");

import type { ReactNode } from "react";
import { SIGN_SHAPES, type SignName, type SignTone } from "@/lib/edge/sign-markup";

/** A drawing and a word. Wrong is in madder; open is what can be done; still is what is covered. */
export function Sign({
  sign,
  tone,
  children,
}: {
  readonly sign: SignName;
  readonly tone: SignTone;
  readonly children: ReactNode;
}): ReactNode {
  return (
    <span className={`sign ${tone}`}>
      <svg viewBox="0 0 15 15" aria-hidden="true" dangerouslySetInnerHTML={{ __html: SIGN_SHAPES[sign] }} />
      <span>{children}</span>
    </span>
  );
}

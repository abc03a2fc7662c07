import type { InputEvent } from "react";

/**
 * A style sheet sees of a day only the attribute that it was drawn with, and on paper it leaves out what is empty: the
 * attribute follows what is typed.
 */
export const valueForStyles = ({ currentTarget }: InputEvent<HTMLInputElement>): void => {
  currentTarget.setAttribute("value", currentTarget.value);
};

import { unchosen } from "@/lib/edge/forms/unchosen";

/**
 * What a form sends. The browser sends a date that is only half filled in as none at all: here it is sent marked, so that
 * it is refused in words and not taken for no date.
 */
export function dataOfForm(form: HTMLFormElement, button: HTMLElement | null = null): FormData {
  const data = new FormData(form, button);
  for (const field of form.elements)
    if (field instanceof HTMLInputElement && field.type === "date" && field.validity.badInput)
      data.set(field.name, unchosen("", null));
  return data;
}

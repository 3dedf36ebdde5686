/** A text field as it was before a scanner typed into it, and how it is put back. */

type TextField = HTMLInputElement | HTMLTextAreaElement;

const textTypes = new Set(['text', 'search', 'password', 'email', 'tel', 'url', 'number', 'date']);

/** The element as a field that takes text, or `undefined` where a key typed there leaves nothing behind. */
export const textFieldOf = (element: Element | null): TextField | undefined => {
  if (element instanceof HTMLTextAreaElement) return element;
  return element instanceof HTMLInputElement && textTypes.has(element.type) ? element : undefined;
};

export interface FieldSnapshot {
  readonly field: TextField;
  readonly value: string;
  readonly selection: readonly [number, number] | undefined;
}

export const snapshotOf = (field: TextField): FieldSnapshot => {
  const { selectionStart, selectionEnd } = field;
  return {
    field,
    value: field.value,
    selection: selectionStart === null || selectionEnd === null ? undefined : [selectionStart, selectionEnd],
  };
};

/** Through the element's own setter and an input event, so that React takes notice. */
export const restore = ({ field, value, selection }: FieldSnapshot): void => {
  if (field.value === value) return;
  const prototype =
    field instanceof HTMLTextAreaElement ? HTMLTextAreaElement.prototype : HTMLInputElement.prototype;
  Object.getOwnPropertyDescriptor(prototype, 'value')?.set?.call(field, value);
  field.dispatchEvent(new Event('input', { bubbles: true }));
  if (selection !== undefined) field.setSelectionRange(...selection);
};

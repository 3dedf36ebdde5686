/** A field as it was before a scanner typed into it, and how it is put back. */

type TextField = HTMLInputElement | HTMLTextAreaElement;

const textTypes = new Set(['text', 'search', 'password', 'email', 'tel', 'url', 'number', 'date']);

/** True where a key typed at the element leaves a character behind. */
export const takesText = (element: Element | null): element is TextField =>
  element instanceof HTMLTextAreaElement ||
  (element instanceof HTMLInputElement && textTypes.has(element.type));

/** True where a key typed at the element changes what it says: a text field, or a list that jumps to a letter. */
export const takesKeys = (element: Element | null): element is TextField | HTMLSelectElement =>
  takesText(element) || element instanceof HTMLSelectElement;

export interface FieldSnapshot {
  readonly field: TextField | HTMLSelectElement;
  readonly value: string;
  readonly selection: readonly [number, number] | undefined;
}

export const snapshotOf = (field: TextField | HTMLSelectElement): FieldSnapshot => {
  if (field instanceof HTMLSelectElement) return { field, value: field.value, selection: undefined };
  const { selectionStart, selectionEnd } = field;
  return {
    field,
    value: field.value,
    selection: selectionStart === null || selectionEnd === null ? undefined : [selectionStart, selectionEnd],
  };
};

/** Through the element's own setter and an event, so that React takes notice. */
export const restore = ({ field, value, selection }: FieldSnapshot): void => {
  if (field.value === value) return;
  Object.getOwnPropertyDescriptor(prototypeOf(field), 'value')?.set?.call(field, value);
  field.dispatchEvent(new Event(field instanceof HTMLSelectElement ? 'change' : 'input', { bubbles: true }));
  if (selection !== undefined && takesText(field)) field.setSelectionRange(...selection);
};

const prototypeOf = (field: TextField | HTMLSelectElement): object => {
  if (field instanceof HTMLSelectElement) return HTMLSelectElement.prototype;
  return field instanceof HTMLTextAreaElement ? HTMLTextAreaElement.prototype : HTMLInputElement.prototype;
};

/** Saves a text as a file of the person's own. */
export const saveText = (text: string, fileName: string, contentType: string): void => {
  const address = URL.createObjectURL(new Blob([text], { type: contentType }));
  const link = document.createElement('a');
  link.href = address;
  link.download = fileName;
  link.click();
  window.setTimeout(() => URL.revokeObjectURL(address), 60_000);
};

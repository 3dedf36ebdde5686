/** Bytes of the page as the station takes and gives them. */

export const base64Of = (bytes: Blob): Promise<string> =>
  new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(String(reader.result).replace(/^[^,]*,/, ''));
    reader.onerror = () => reject(reader.error);
    reader.readAsDataURL(bytes);
  });

export const jpegAddress = (base64: string): string => `data:image/jpeg;base64,${base64}`;

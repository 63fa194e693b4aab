/** How well a picture is kept, the best first. */
const QUALITIES = [0.8, 0.6, 0.4, 0.25];

/** A picture on white, no larger than this each way. @param {Blob} file @param {number} mostPx @returns {Promise<HTMLCanvasElement>} */
export async function drawnSmaller(file, mostPx) {
  const picture = await createImageBitmap(file);
  const share = Math.min(1, mostPx / Math.max(picture.width, picture.height));
  const canvas = document.createElement('canvas');
  [canvas.width, canvas.height] = [Math.round(picture.width * share), Math.round(picture.height * share)];
  const pen = canvas.getContext('2d');
  pen.fillStyle = '#fff';
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
  return canvas;
}

/** The canvas as JPEG, as good as fits, else as small as it gets. @returns {Promise<Blob>} */
export async function jpegOf(canvas, mostBytes) {
  let blob = null;
  for (const quality of QUALITIES) {
    blob = await new Promise(done => { canvas.toBlob(done, 'image/jpeg', quality); });
    if (blob.size <= mostBytes) break;
  }
  return blob;
}

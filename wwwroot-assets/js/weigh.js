// What the weighing pages ask of the browser: a photo's pixels, a typed entry kept, a sheet opened.

// A stream has a byte at least: a single one stands for nothing.
const nothing = () => new Uint8Array(1);

// Draws the chosen photo small and gives its raw pixels, width and height first; nothing where the browser cannot read it.
export async function pixels(input, canvas, most) {
  const file = input.files && input.files[0];
  if (!file) return nothing();
  let photo;
  try { photo = await createImageBitmap(file); } catch { return nothing(); }
  const scale = Math.min(1, most / Math.max(photo.width, photo.height));
  const width = Math.max(8, Math.round(photo.width * scale)), height = Math.max(8, Math.round(photo.height * scale));
  const small = await createImageBitmap(photo, { resizeWidth: width, resizeHeight: height, resizeQuality: "high" });
  canvas.width = width;
  canvas.height = height;
  const pen = canvas.getContext("2d", { willReadFrequently: true });
  pen.fillStyle = "#fff";
  pen.fillRect(0, 0, width, height);
  pen.drawImage(small, 0, 0);
  const rgba = pen.getImageData(0, 0, width, height).data;
  const bytes = new Uint8Array(4 + width * height * 3);
  bytes.set([width & 255, width >> 8, height & 255, height >> 8]);
  for (let from = 0, to = 4; from < rgba.length; from += 4, to += 3) bytes.set(rgba.subarray(from, from + 3), to);
  return bytes;
}

// What was typed into a form before the page was lost, by field; null where nothing was.
export const typed = name => { try { return JSON.parse(sessionStorage.getItem("typed:" + name)); } catch { return null; } };

// The colour picker's own script, once: a page reached from a plain one does not have it yet.
let dressing;
export const dress = () => dressing ??= new Promise((done, failed) => {
  const script = document.createElement("script");
  script.src = new URL("_content/MudBlazor/MudBlazor.min.js?v=9.12.0", document.baseURI);
  script.onload = () => done();
  script.onerror = () => { dressing = null; failed(new Error("The picker's script did not come.")); };
  document.head.append(script);
});

export const forget = name => sessionStorage.removeItem("typed:" + name);

export const open = sheet => { if (sheet && !sheet.open) sheet.showModal(); };

export const close = sheet => { if (sheet && sheet.open) sheet.close(); };

// What was pasted, or a file's bytes, to be looked at before anything is kept; nothing where there is none or it is too large.
export const pasted = area => area.value.length > 1 ? new TextEncoder().encode(area.value) : nothing();

export async function bytes(input, most) {
  const file = input.files && input.files[0];
  return file && file.size > 1 && file.size <= most ? new Uint8Array(await file.arrayBuffer()) : nothing();
}

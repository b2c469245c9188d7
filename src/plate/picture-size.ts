/** A picture's size in pixels as its file says it; the orientation that a camera may have noted is left out. */
export type PictureSize = { width: number; height: number };

/**
 * Reads a picture's size from the beginning of its file, before a browser unpacks it: a small file may hold a picture
 * that no phone has the memory for. JPEG (ITU-T T.81, B.2.2), PNG (W3C, 11.2.2) and WebP (RFC 9649).
 * @returns null for anything else
 */
export function pictureSizeOf(file: Uint8Array): PictureSize | null {
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  try {
    const size = ofPng(view) ?? ofWebp(view) ?? ofJpeg(view);
    return size && size.width > 0 && size.height > 0 ? size : null;
  } catch {
    // It ends before its size is said.
    return null;
  }
}

function ofPng(view: DataView): PictureSize | null {
  if (view.getUint32(0) !== 0x89504e47 || view.getUint32(4) !== 0x0d0a1a0a) return null;
  return { width: view.getUint32(16), height: view.getUint32(20) };
}

function ofWebp(view: DataView): PictureSize | null {
  if (view.getUint32(0) !== 0x52494646 || view.getUint32(8) !== 0x57454250) return null;
  const three = (at: number) => view.getUint16(at, true) + view.getUint8(at + 2) * 65_536;
  switch (view.getUint32(12)) {
    // `VP8X`, `VP8L` and `VP8 `.
    case 0x56503858:
      return { width: three(24) + 1, height: three(27) + 1 };
    case 0x5650384c: {
      const bits = view.getUint32(21, true);
      return { width: (bits & 0x3fff) + 1, height: ((bits >>> 14) & 0x3fff) + 1 };
    }
    case 0x56503820:
      return { width: view.getUint16(26, true) & 0x3fff, height: view.getUint16(28, true) & 0x3fff };
    default:
      return null;
  }
}

function ofJpeg(view: DataView): PictureSize | null {
  if (view.getUint16(0) !== 0xffd8) return null;
  for (let at = 2; ; ) {
    const marker = view.getUint16(at);
    if (marker < 0xff01) return null;
    // Filling bytes before a marker.
    if (marker === 0xffff) {
      at += 1;
      continue;
    }
    const isFrame = marker >= 0xffc0 && marker <= 0xffcf && ![0xffc4, 0xffc8, 0xffcc].includes(marker);
    if (isFrame) return { width: view.getUint16(at + 7), height: view.getUint16(at + 5) };
    at += 2 + view.getUint16(at + 2);
  }
}

import { between, type Chance, normal } from "../world/chance.ts";
import type { Plate } from "./print.ts";

/** What spoils a photo, and how many of two hundred have it. */
export const distortions = {
  straight: 20,
  rotated: 30,
  turned: 20,
  skewed: 30,
  blurred: 30,
  glare: 25,
  worn: 25,
  "low light": 20,
} as const;
export type Distortion = keyof typeof distortions;

/** A photo's pixels: a phone's picture is larger, and scaled to this before it is read. */
const [wide, high] = [1600, 1200];

type Point = [x: number, y: number];

/** A photo of a plate as a phone's camera may have taken it; every photo is a little of everything, and much of one. */
export async function takePhoto(plate: Plate, spoilt: Distortion, chance: Chance): Promise<Blob> {
  const flat = drawPlate(plate, spoilt, chance);
  const photo = new OffscreenCanvas(wide, high);
  const brush = contextOf(photo);
  brush.putImageData(project(flat, cornersOf(plate, spoilt, chance), chance), 0, 0);
  const blurred = new OffscreenCanvas(wide, high);
  const lens = contextOf(blurred);
  const blur = spoilt === "blurred" ? between(chance, 1.6, 3.2) : between(chance, 0.3, 0.9);
  lens.filter = `blur(${blur}px)`;
  lens.drawImage(photo, 0, 0);
  lens.filter = "none";
  if (spoilt === "blurred" && chance() < 0.5) shake(lens, blurred, chance);
  if (spoilt === "glare") shine(lens, chance);
  const light = spoilt === "low light" ? between(chance, 0.12, 0.3) : between(chance, 0.7, 1);
  const noise = spoilt === "low light" ? between(chance, 5, 10) : between(chance, 1.5, 4);
  lens.putImageData(expose(lens.getImageData(0, 0, wide, high), light, noise, chance), 0, 0);
  if (spoilt !== "turned") return blurred.convertToBlob({ type: "image/jpeg", quality: 0.82 });
  return turn(blurred, 1 + Math.floor(chance() * 3)).convertToBlob({ type: "image/jpeg", quality: 0.82 });
}

const contextOf = (canvas: OffscreenCanvas) =>
  canvas.getContext("2d", { willReadFrequently: true }) as OffscreenCanvasRenderingContext2D;

function drawPlate(plate: Plate, spoilt: Distortion, chance: Chance): ImageData {
  const [width, height] = [1400, Math.round(1400 / plate.shape)];
  const canvas = new OffscreenCanvas(width, height);
  const brush = contextOf(canvas);
  brush.fillStyle = plate.ground;
  brush.fillRect(0, 0, width, height);
  brush.strokeStyle = plate.ink;
  brush.lineWidth = 4;
  brush.strokeRect(12, 12, width - 24, height - 24);
  brush.fillStyle = plate.ink;
  let y = 0.05 * height;
  const sum = plate.lines.reduce((all, { size }) => all + size, 0);
  const gap = (0.9 - sum) / plate.lines.length;
  for (const { text, size, x, bold } of plate.lines) {
    y += (size + Math.min(gap, 0.06)) * height;
    brush.font = `${bold ? "bold " : ""}${Math.round(size * height * 1.3)}px "${plate.font}"`;
    brush.fillText(text, x * width, y, width * (0.97 - x));
  }
  if (spoilt === "worn") wear(brush, plate, width, height, chance);
  return brush.getImageData(0, 0, width, height);
}

/** Scratches in the ground's colour, rubbed patches and dirt. */
function wear(
  brush: OffscreenCanvasRenderingContext2D,
  { ground, ink }: Plate,
  width: number,
  height: number,
  chance: Chance,
): void {
  const stroke = (colour: string, thick: number, alpha: number) => {
    brush.globalAlpha = alpha;
    brush.strokeStyle = colour;
    brush.lineWidth = thick;
    const [x, y, angle] = [chance() * width, chance() * height, chance() * 6.28];
    const long = between(chance, 60, 500);
    brush.beginPath();
    brush.moveTo(x, y);
    brush.lineTo(x + Math.cos(angle) * long, y + Math.sin(angle) * long);
    brush.stroke();
  };
  for (let each = 0; each < 45; each++) stroke(ground, between(chance, 1, 4), 0.9);
  for (let each = 0; each < 15; each++) stroke(ink, between(chance, 1, 2.5), 0.5);
  for (let each = 0; each < 20; each++) {
    brush.globalAlpha = between(chance, 0.2, 0.6);
    brush.fillStyle = chance() < 0.7 ? ground : "#6b5a45";
    brush.beginPath();
    brush.ellipse(
      chance() * width,
      chance() * height,
      between(chance, 10, 90),
      between(chance, 6, 30),
      chance() * 3,
      0,
      6.3,
    );
    brush.fill();
  }
  for (let each = 0; each < 2500; each++) {
    brush.globalAlpha = 0.8;
    brush.fillStyle = chance() < 0.6 ? ground : ink;
    brush.fillRect(chance() * width, chance() * height, between(chance, 1, 3), between(chance, 1, 3));
  }
  brush.globalAlpha = 1;
}

/** Where the plate's corners lie in the photo. */
function cornersOf({ shape }: Plate, spoilt: Distortion, chance: Chance): Point[] {
  const angle =
    (spoilt === "rotated" ? between(chance, 8, 28) * (chance() < 0.5 ? -1 : 1) : between(chance, -3, 3)) *
    (Math.PI / 180);
  const [sin, cos] = [Math.sin(angle), Math.cos(angle)];
  const most = Math.min(
    wide / (Math.abs(cos) + Math.abs(sin) / shape),
    high / (Math.abs(sin) + Math.abs(cos) / shape),
  );
  const width = most * between(chance, 0.68, 0.92);
  const height = width / shape;
  const [left, top] = [wide / 2 + between(chance, -30, 30), high / 2 + between(chance, -25, 25)];
  const lean = spoilt === "skewed" ? 0.16 : 0.02;
  return (
    [
      [-0.5, -0.5],
      [0.5, -0.5],
      [0.5, 0.5],
      [-0.5, 0.5],
    ] as Point[]
  ).map(([across, down]) => {
    const x = across * width * (1 + between(chance, -lean, lean));
    const y = down * height * (1 + between(chance, -1.6 * lean, 1.6 * lean));
    return [left + x * cos - y * sin, top + x * sin + y * cos];
  });
}

/** The plate as seen from its corners, before a fridge's wall. */
function project(flat: ImageData, corners: Point[], chance: Chance): ImageData {
  const photo = new ImageData(wide, high);
  const wall = between(chance, 120, 225);
  const tilt = [between(chance, -30, 30), between(chance, -30, 30)] as const;
  const [a, b, c, d, e, f, g, h] = homography(corners, flat.width, flat.height) as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  for (let y = 0; y < high; y++)
    for (let x = 0; x < wide; x++) {
      const w = g * x + h * y + 1;
      const u = (a * x + b * y + c) / w;
      const v = (d * x + e * y + f) / w;
      const at = 4 * (y * wide + x);
      const shade = (tilt[0] * x) / wide + (tilt[1] * y) / high;
      for (let colour = 0; colour < 3; colour++)
        photo.data[at + colour] =
          shade +
          (u < 0 || v < 0 || u >= flat.width - 1 || v >= flat.height - 1 ? wall : sample(flat, u, v, colour));
      photo.data[at + 3] = 255;
    }
  return photo;
}

function sample({ width, data }: ImageData, u: number, v: number, colour: number): number {
  const [left, top] = [Math.floor(u), Math.floor(v)];
  const [across, down] = [u - left, v - top];
  const at = (x: number, y: number) => data[4 * (y * width + x) + colour] ?? 0;
  return (
    (at(left, top) * (1 - across) + at(left + 1, top) * across) * (1 - down) +
    (at(left, top + 1) * (1 - across) + at(left + 1, top + 1) * across) * down
  );
}

/** From a photo's pixel to the plate's, by its four corners: eight equations (Gauss). */
function homography(corners: Point[], width: number, height: number): number[] {
  const to: Point[] = [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ];
  const rows = corners.flatMap(([x, y], corner) => {
    const [u, v] = to[corner] as Point;
    return [
      [x, y, 1, 0, 0, 0, -x * u, -y * u, u],
      [0, 0, 0, x, y, 1, -x * v, -y * v, v],
    ];
  });
  for (let step = 0; step < 8; step++) {
    const best = rows.slice(step).reduce((a, b) => (Math.abs(b[step] ?? 0) > Math.abs(a[step] ?? 0) ? b : a));
    rows.splice(rows.indexOf(best), 1);
    rows.splice(step, 0, best);
    for (const row of rows) {
      if (row === best) continue;
      const factor = (row[step] ?? 0) / (best[step] ?? 1);
      for (let cell = step; cell < 9; cell++) row[cell] = (row[cell] ?? 0) - factor * (best[cell] ?? 0);
    }
  }
  return rows.map((row, step) => (row[8] ?? 0) / (row[step] ?? 1));
}

/** A hand that moved: the picture over itself along a short way. */
function shake(lens: OffscreenCanvasRenderingContext2D, picture: OffscreenCanvas, chance: Chance): void {
  const copy = new OffscreenCanvas(wide, high);
  contextOf(copy).drawImage(picture, 0, 0);
  const [angle, long] = [chance() * 6.28, between(chance, 2, 6)];
  for (let step = 1; step <= 6; step++) {
    lens.globalAlpha = 1 / (step + 1);
    lens.drawImage(copy, (Math.cos(angle) * long * step) / 6, (Math.sin(angle) * long * step) / 6);
  }
  lens.globalAlpha = 1;
}

/** A lamp or a window that the plate throws back. */
function shine(lens: OffscreenCanvasRenderingContext2D, chance: Chance): void {
  for (let each = 0; each < 2; each++) {
    const [x, y] = [between(chance, 0.2, 0.8) * wide, between(chance, 0.2, 0.8) * high];
    const reach = between(chance, 180, 420);
    const light = lens.createRadialGradient(x, y, 0, x, y, reach);
    light.addColorStop(0, `rgba(255,255,255,${between(chance, 0.7, 0.92)})`);
    light.addColorStop(0.4, `rgba(255,255,255,${between(chance, 0.35, 0.6)})`);
    light.addColorStop(1, "rgba(255,255,255,0)");
    lens.fillStyle = light;
    lens.fillRect(0, 0, wide, high);
  }
}

function expose(photo: ImageData, light: number, noise: number, chance: Chance): ImageData {
  const { data } = photo;
  const grains = Array.from({ length: 4099 }, () => normal(chance, 0, noise));
  for (let at = 0; at < data.length; at += 4) {
    const grain = grains[(at * 7 + ((at >> 9) % 1021)) % 4099] ?? 0;
    for (let colour = 0; colour < 3; colour++) data[at + colour] = (data[at + colour] ?? 0) * light + grain;
  }
  return photo;
}

function turn(photo: OffscreenCanvas, quarters: number): OffscreenCanvas {
  const lies = quarters % 2 === 1;
  const turned = new OffscreenCanvas(lies ? high : wide, lies ? wide : high);
  const brush = contextOf(turned);
  brush.translate(turned.width / 2, turned.height / 2);
  brush.rotate((quarters * Math.PI) / 2);
  brush.drawImage(photo, -wide / 2, -high / 2);
  return turned;
}

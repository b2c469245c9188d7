import { build, layOutByModel } from "./catalogue-fixture.ts";

/** A build that stops after its first file and waits to be killed: `<feed> <out>`. */
const [feed = "", out = ""] = process.argv.slice(2);
build(feed, out, {
  run: process.pid,
  layOut: (collected) => {
    const { manifest, files } = layOutByModel(collected);
    return { manifest, files: stalling(files) };
  },
});

function* stalling<File>(files: Iterable<File>): Generator<File> {
  let written = 0;
  for (const file of files) {
    if (written++ === 1) {
      process.stdout.write("first file written\n");
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0);
    }
    yield file;
  }
}

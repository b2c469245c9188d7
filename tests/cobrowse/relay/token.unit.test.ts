import { describe, expect, test } from "vitest";
import { readSigned, readToken } from "../../../src/cobrowse/relay/token.ts";
import { key, shop, tokenFor } from "./agents.ts";

describe("a signature", () => {
  /** The example of RFC 7515, appendix A.1: its key (A.1.1), and the whole token with its line breaks taken out. */
  const rfcKey = Buffer.from(
    "AyM1SysPpbyDfgZld3umj1qzKObwVMkoqQ-EstJQLr_T-1qS0gZH75aKtMN3Yj0iPS4hcgUuTwjAzZr1Z9CAow",
    "base64url",
  );
  const rfcToken =
    "eyJ0eXAiOiJKV1QiLA0KICJhbGciOiJIUzI1NiJ9" +
    ".eyJpc3MiOiJqb2UiLA0KICJleHAiOjEzMDA4MTkzODAsDQogImh0dHA6Ly9leGFtcGxlLmNvbS9pc19yb290Ijp0cnVlfQ" +
    ".dBjftJeZ4CVP-mB92K27uhbUJU1p1r_wW1gFWFOEjXk";

  test("is checked as the example of RFC 7515 has it", () => {
    const payload = '{"iss":"joe",\r\n "exp":1300819380,\r\n "http://example.com/is_root":true}';
    expect(readSigned(rfcToken, rfcKey)).toBe(payload);
  });

  test("is none where any letter of the token is another", () => {
    for (let place = 0; place < rfcToken.length; place++) {
      // The last letter of a part may hold bits that no byte has.
      if (!/[\w-]/.test(rfcToken[place + 1] ?? "")) continue;
      const other = rfcToken[place] === "A" ? "B" : "A";
      const changed = rfcToken.slice(0, place) + other + rfcToken.slice(place + 1);
      if (rfcToken[place] !== ".") expect(readSigned(changed, rfcKey), `${place}`).toBe(null);
    }
  });

  test.each(["", ".", "..", "a.b", "a.b.c.d", "a b.c.d", "eyJhbGciOiJub25lIn0.e30."])(
    "is none in what is no token: %s",
    (token) => expect(readSigned(token, rfcKey)).toBe(null),
  );

  test("for another algorithm, or with more asked than we know, is none although it is right", () => {
    for (const header of [{ alg: "HS512" }, { alg: "none" }, {}, { alg: "HS256", crit: ["b64"], b64: false }])
      expect(readSigned(tokenFor({}, { header }), key)).toBe(null);
    expect(readSigned(tokenFor(), key)).not.toBe(null);
  });
});

describe("a token", () => {
  test("says who an agent is, until the second that it ends", () => {
    const token = tokenFor({ exp: 1000 });
    expect(readToken(token, key, shop, 999_999)).toEqual({ exp: 1000, shop, sub: "ash-1", name: "Ash" });
    expect(readToken(token, key, shop, 1_000_000)).toBe(null);
  });

  test("is good in its own shop alone", () => {
    expect(readToken(tokenFor(), key, "another", 0)).toBe(null);
  });

  test.each([{ name: "" }, { name: "x".repeat(61) }, { sub: 5 }, { exp: "1" }, { exp: 1e300 }])(
    "is none with what nobody would sign: %j",
    (claims) => expect(readToken(tokenFor(claims), key, shop, 0)).toBe(null),
  );
});

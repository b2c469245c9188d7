import { expect, test } from "vitest";
import { addressOf } from "../../../src/cobrowse/relay/address.ts";

test.each([
  ["an IPv4 address is itself", "192.0.2.1", undefined, 0, "192.0.2.1"],
  ["one that is written as IPv6 is the same", "::ffff:192.0.2.1", undefined, 0, "192.0.2.1"],
  ["of IPv6 the first half counts", "2001:db8:1:2:3:4:5:6", undefined, 0, "2001:db8:1:2"],
  ["however it is shortened", "2001:db8::6", undefined, 0, "2001:db8:0:0"],
  ["or written", "2001:0DB8:0000::6", undefined, 0, "2001:db8:0:0"],
  ["the machine itself", "::1", undefined, 0, "0:0:0:0"],
  ["without a proxy nobody is believed", "192.0.2.1", "198.51.100.1", 0, "192.0.2.1"],
  ["with one, what it has seen", "10.0.0.1", "203.0.113.9, 198.51.100.1", 1, "198.51.100.1"],
  ["with two, what the first has seen", "10.0.0.1", "203.0.113.9, 198.51.100.1, 10.0.0.2", 2, "198.51.100.1"],
  ["with one that says nothing, the proxy", "10.0.0.1", undefined, 1, "10.0.0.1"],
])("%s", (_, direct, forwarded, proxies, counts) => {
  expect(addressOf(direct, forwarded, proxies)).toBe(counts);
});

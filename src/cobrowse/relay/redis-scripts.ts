import { relayBounds as bounds } from "../protocol/index.ts";

/**
 * What several relays do to one Redis, each in one step: nobody else comes between its lines. A room is a list of its
 * entries as JSON, whose places are their numbers, and a hash: `<from> <lane>` has the last number of a lane, `<from>
 * <lane> <n>` the entry that one got, `steered` the last entry that steered the room, `place <peer>` how often somebody
 * has sat down. Both expire together.
 */
export const scripts = {
  /**
   * Keys: list and hash of each draft. Given of each: channel, lane, number, entry, entries known, forgotten from,
   * whether it steers, whether it is the first. An answer for each: what has come at a time costs one call.
   */
  append: {
    lua: `
local function append(list, hash, channel, lane, n, entry, seen, untilThen, steers, isFirst)
  local length = redis.call('LLEN', list)
  if length < seen or (length == 0 and isFirst == '0') then return {'lost'} end
  local own = lane .. ' ' .. n
  local has = redis.call('HMGET', hash, own, lane, 'steered')
  if has[1] then return {'known', tonumber(has[1]), redis.call('LINDEX', list, tonumber(has[1]) - 1)} end
  local last = tonumber(has[2] or '0')
  if tonumber(n) ~= last + 1 then return {'missing', last} end
  -- Near the bound of a room every entry counts, before that only what steers it.
  if tonumber(has[3] or '0') > seen or (length > seen and length >= ${bounds.entries}) then return {'moved'} end
  local seq = redis.call('RPUSH', list, entry)
  if steers == '1' then redis.call('HSET', hash, lane, n, own, seq, 'steered', seq)
  else redis.call('HSET', hash, lane, n, own, seq) end
  if untilThen ~= '' then
    redis.call('PEXPIREAT', list, untilThen)
    redis.call('PEXPIREAT', hash, untilThen)
  end
  redis.call('PUBLISH', channel, seq .. ' ' .. entry)
  return {'fresh', seq}
end
local all = {}
for nth = 1, #KEYS / 2 do
  local at = (nth - 1) * 8
  all[nth] = append(KEYS[2 * nth - 1], KEYS[2 * nth], ARGV[at + 1], ARGV[at + 2], ARGV[at + 3], ARGV[at + 4],
    tonumber(ARGV[at + 5]), ARGV[at + 6], ARGV[at + 7], ARGV[at + 8])
end
return all`,
  },
  /** Keys: hash. Given: channel, peer. */
  seat: {
    numberOfKeys: 1,
    lua: `
if redis.call('EXISTS', KEYS[1]) == 0 then return 0 end
local place = redis.call('HINCRBY', KEYS[1], 'place ' .. ARGV[2], 1)
redis.call('PUBLISH', ARGV[1], 'place ' .. place .. ' ' .. ARGV[2])
return place`,
  },
  /** Keys: list. Given: the first place to read from, counted from 0. How many there are, and those from there on. */
  read: {
    numberOfKeys: 1,
    lua: `return {redis.call('LLEN', KEYS[1]), redis.call('LRANGE', KEYS[1], ARGV[1], -1)}`,
  },
  /** Keys: a list of instants. Given: now. */
  tries: {
    numberOfKeys: 1,
    lua: `
local now = tonumber(ARGV[1])
local first = redis.call('LINDEX', KEYS[1], 0)
while first and tonumber(first) <= now - 60000 do
  redis.call('LPOP', KEYS[1])
  first = redis.call('LINDEX', KEYS[1], 0)
end
if redis.call('LLEN', KEYS[1]) >= ${bounds.tries} then return tonumber(first) + 60000 - now end
redis.call('RPUSH', KEYS[1], ARGV[1])
redis.call('PEXPIRE', KEYS[1], 60000)
return 0`,
  },
  /** Keys: failures of all, and a lock of each name. Given: now. How long a lock lasts, and the wait of everybody. */
  held: {
    lua: `
local now, locked, busy = tonumber(ARGV[1]), 0, 0
for place = 2, #KEYS do
  locked = math.max(locked, tonumber(redis.call('GET', KEYS[place]) or '0') - now)
end
local first = redis.call('LINDEX', KEYS[1], 0)
while first and tonumber(first) <= now - 60000 do
  redis.call('LPOP', KEYS[1])
  first = redis.call('LINDEX', KEYS[1], 0)
end
if redis.call('LLEN', KEYS[1]) >= ${bounds.failuresOfAll} then busy = tonumber(first) + 60000 - now end
return {locked, busy}`,
  },
  /** Keys: failures of all, then of each name its failures in a row and its lock. Given: now. */
  failed: {
    lua: `
redis.call('RPUSH', KEYS[1], ARGV[1])
redis.call('LTRIM', KEYS[1], -${bounds.failuresOfAll}, -1)
redis.call('PEXPIRE', KEYS[1], 60000)
for place = 2, #KEYS, 2 do
  local failures = redis.call('INCR', KEYS[place])
  redis.call('PEXPIRE', KEYS[place], 86400000)
  if failures >= ${bounds.failures} then
    redis.call('DEL', KEYS[place])
    redis.call('SET', KEYS[place + 1], tonumber(ARGV[1]) + ${bounds.lockLasts}, 'PX', ${bounds.lockLasts})
  end
end
return 1`,
  },
} as const;

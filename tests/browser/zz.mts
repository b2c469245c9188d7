const c=()=>{const u=process.cpuUsage();return (u.user+u.system)/1e6};
const t0=c();
const e = await import("./expected.ts"); console.log("import expected",c()-t0);
let t=c(); const {sessionsAtEveryTurn}=await import("./sessions.ts");const m=sessionsAtEveryTurn();console.log("everyTurn",c()-t,m.size);
const {replay}=await import("../../src/session/index.ts");
t=c();let n=0;for(const s of m.values()){replay(e.flow,s.log,e.charts);n+=s.log.events.length}console.log("replay all",c()-t,n);
const {createCharts}=await import("../../src/compile/index.ts");
const fresh=createCharts(e.flow);
t=c();for(const s of m.values()){replay(e.flow,s.log,fresh);}console.log("replay all, fresh charts",c()-t);
for(const a of [["wait-for-ice.wait"],["stop-tap.gate-water-supply",{ "opening.symptom": "no-ice" }],["flow-test.run", { "opening.symptom": "no-ice" }],["freezer-temperature.read"],["cube-weight.weigh", { "fresh-ice.look": "small" }]]){t=c();e.sessionAt(...a);console.log(a[0],c()-t)}
t=c();e.atModelOfBin();console.log("bin",c()-t);

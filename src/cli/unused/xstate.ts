import { no, of, type Unused, yes } from "./unused.ts";

/**
 * The chart is asked for its next state and nothing else: no actor is started, nothing is invoked, nothing waits. All
 * that a state and a way may say stands in the types `StateConfig` and `Transition` of the flow.
 */
export const xstate: Unused = {
  version: "5.33.3",
  members: [
    ...of("StateMachine", "provide", "start", "microstep", "resolveState", "restoreSnapshot"),
    ...of("StateMachine", "getPersistedSnapshot", "definition", "toJSON"),
    ...of("StateNode", "on", "after", "invoke", "events", "ownEvents", "definition", "toJSON"),
    ...of("createMachineSnapshot", "tags", "children", "output", "matches", "hasTag", "toJSON"),
    ...["snapshot.children", "preInitial.children", "resolveAssign.children", "macrostep.microsteps"],
    ...of("transition", "toJSON", "meta", "description"),
    ...of("assignArgs", "spawn", "self", "system"),
    ...of("actionArgs", "self", "system"),
  ],
  silent: [
    ...[
      "actorScope.system._sendInspectionEvent",
      "actorScope.actionExecutor",
      "addMicrostep",
      "retries?.forEach",
    ],
    ...["spawnChild", "stopChildren", "formatRouteTransitions"],
    ...of("this", "getPersistedSnapshot", "restoreSnapshot", "start", "transition", "getInitialSnapshot"),
    ...of("this", "description", "history", "output", "tags", "entry", "exit", "path", "events"),
    ...of("this", "version", "schemas", "__xstatenode"),
  ],
  always: {
    "console.log.bind(console)": "0",
    "stateNode.after": "[]",
    "stateNode.invoke": "[]",
    "stateNodeToEnter.invoke": "[]",
    "stateNodeToEnter.invoke.map(invokeDef => invokeDef.id)": "void 0",
    "deferredActorIds ? …": "void 0",
    "event.type === XSTATE_STOP": no,
    "isErrorActorEvent(currentEvent)": no,
    // A state is waited at or leads through others: none is parallel, final or the memory of another.
    "this.config.type": no,
    "this.config.history": no,
    "this.config.id || …": "this.config.id",
    "stateNode.config.onDone": no,
    "stateNode.type === 'parallel'": no,
    "s.type === 'parallel'": no,
    "anc.type === 'parallel'": no,
    "domain?.type === 'parallel'": no,
    "stateNode.type === 'final'": no,
    "stateNodeToEnter.type === 'final'": no,
    "nextState.status === 'done'": no,
    "isHistoryNode(s)": no,
    "isHistoryNode(stateNode)": no,
    "isHistoryNode(initialState)": no,
    "isHistoryNode(targetNode)": no,
    "getHistoryNodes(exitStateNode)": "[]",
    "Object.keys(stateValue).length === 1": yes,
    // Nothing is done when a state is entered or left.
    "stateNodeToEnter.entry": "[]",
    "stateNodeToEnter.initial.actions": "[]",
    "[...s.exit, …": "[]",
    // A way is an object and leads to a state by its id, which has no full stop in it; a first state is named.
    "typeof transitionLike === 'undefined' || …": no,
    "descriptor === NULL_EVENT": no,
    "typeof target !== 'string'": no,
    "isStateId(target)": yes,
    "isStateId(stateKey)": no,
    "toStatePath(stateId)": "[stateId]",
    "getStateNodeByPath(stateNode, relativePath)": "stateNode",
    "!stateNode.states": no,
    "typeof _target === 'string'": yes,
    // A guard and an action are named, with parameters that are data, and stand for plain functions and for `assign`.
    "typeof guard === 'function'": no,
    "typeof guard === 'string'": no,
    "typeof guard === 'object'": yes,
    "typeof guard.params === 'function'": no,
    "typeof resolved !== 'function'": no,
    "!('check' in resolved)": yes,
    "typeof action === 'string'": no,
    "typeof action.params === 'function'": no,
    "!resolvedAction || …": no,
    "'retryResolve' in builtinAction": no,
    "'execute' in builtinAction": no,
    "typeof assignment === 'function'": yes,
    // The memory is made by a function.
    "!snapshot.context": no,
    "typeof context === 'function'": yes,
    "typeof context !== 'function' && context": no,
    "typeof this.config.context !== 'function' && …": "{}",
    // Steps are counted only where a chart sets a limit to them.
    "snapshot.machine.options?.maxIterations ?? Infinity": "0",
    "iterationCount > maxIterations": no,
    "iterationCount++": "0",
  },
  bodies: {
    // The library starts a whole actor here, for each step anew, to have something to hand to it.
    createInertActorScope: "{ return {}; }",
    // Where nothing is parallel, one way at most is taken at a time.
    removeConflictingTransitions: "{ return Array.from(enabledTransitions); }",
    // No way is taken at whatever happens.
    getCandidates: "{ return stateNode.transitions.get(receivedEventType) ?? []; }",
  },
};

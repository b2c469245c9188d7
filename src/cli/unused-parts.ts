/** What of one library this script never runs, in the library's own words. */
export type Unused = {
  /** Members that nothing calls, as `Class.member`. */
  members?: string[];
  /** Calls and assignments, by what is called or assigned to, that nobody sees the effect of. */
  silent?: string[];
  /** Expressions as the library writes them, and what they always come to here. */
  always?: Record<string, string>;
  /** Functions, and the body that is enough here. */
  bodies?: Record<string, string>;
};

const no = "false";

const of = (owner: string, ...members: string[]) => members.map((member) => `${owner}.${member}`);

/** Texts come with the flow, in one language and its fallback, and are only ever looked up. */
const i18next: Unused = {
  silent: [
    // Without the option `debug` none of these says anything.
    ...of("this.logger", "log", "warn", "once", "deprecate", "error"),
    ...of("baseLogger", "init", "create", "deprecate"),
    // It fetches nothing, so no part of it has to be told what is there already.
    ...["s.utils", "s.backendConnector", "s.backendConnector.devIsDefaultFallback", "s.backendConnector.on"],
    // The texts stay as they are: nothing reads them from outside, nothing adds to them.
    ...["storeApi.forEach", "storeApiChained.forEach", "this.deprecateDottedLng"],
  ],
  always: {
    "this.logger.debug": no,
    "new Logger()": "void 0",
    "!this.options.resources || this.options.partialBundledLanguages": no,
    "this.utils?.hasLoadedNamespace": no,
    // No detector of the language and no format of the texts is plugged in.
    "this.modules.languageDetector": no,
    "this.services.languageDetector": no,
    "this.modules.i18nFormat": no,
    "this.i18nFormat": no,
    "postProcessorNames?.length": no,
    // Options that `createTexts` does not set.
    "this.options.saveMissing": no,
    "this.options.supportedLngs": no,
    "this.options.returnedObjectHandler": no,
    "!opt.returnObjects && !this.options.returnObjects": "true",
    "opt.returnDetails !== undefined ? opt.returnDetails : this.options.returnDetails": no,
    "!this.options.isClone": "true",
    // A key is a string.
    "typeof keys === 'function'": no,
    "typeof k === 'function'": no,
  },
  members: [
    ...of("I18n", "use", "exists", "getFixedT", "setDefaultNamespace", "hasLoadedNamespace"),
    ...of("I18n", "loadNamespaces", "loadLanguages", "reloadResources", "hydrate", "cloneInstance"),
    ...of("I18n", "dir", "toJSON"),
    ...of("Translator", "exists", "getUsedParamsDetails"),
    ...of("PluralResolver", "clearCache", "needsPlural", "getPluralFormsOfKey", "getSuffixes"),
    ...of("LanguageUtil", "clearCache", "deprecateBareCode"),
    ...of("ResourceStore", "addResource", "addResources", "addResourceBundle", "removeResourceBundle"),
    ...of("ResourceStore", "addNamespaces", "removeNamespaces", "hasResourceBundle", "getResourceBundle"),
    ...of("ResourceStore", "deprecateDottedLng", "toJSON"),
  ],
};

/**
 * The chart is asked for its next state and nothing else: no actor is started, nothing is invoked, nothing waits.
 * The type `StateConfig` of the flow has no place for any of it.
 */
const xstate: Unused = {
  silent: [
    ...["actorScope.system._sendInspectionEvent", "spawnChild", "createSpawner", "stopChildren"],
    ...["formatRouteTransitions", "this.events"],
    ...of("this", "getPersistedSnapshot", "restoreSnapshot", "start"),
  ],
  always: {
    "stateNode.after": "[]",
    "stateNode.invoke": "[]",
    "stateNodeToEnter.invoke": "[]",
    "stateNodeToEnter.invoke.map(invokeDef => invokeDef.id)": "void 0",
    "s.invoke.map(def => stopChild(def.id))": "[]",
    "event.type === XSTATE_STOP": no,
  },
  bodies: {
    // The library starts a whole actor here, for each step anew, to have something to hand to it.
    createInertActorScope: "{ return {} }",
  },
  members: [
    ...of("StateMachine", "provide", "start", "microstep", "resolveState", "restoreSnapshot"),
    ...of("StateMachine", "getPersistedSnapshot", "definition", "toJSON"),
    ...of("StateNode", "on", "after", "invoke", "events", "ownEvents", "definition", "toJSON"),
  ],
};

/** By the name of the package. */
export const unusedParts: Record<string, Unused> = { i18next, xstate };

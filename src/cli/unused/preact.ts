import { no, type Unused, yes } from "./unused.ts";

/**
 * All that is drawn is functions with hooks, drawn afresh; nothing in it waits and no tool looks on. The library comes
 * with its names made short, so an entry means what it says in this one version only.
 */
export const preact: Unused = {
  version: "11.2.0",
  silent: ["x.prototype.forceUpdate", "x.prototype.render"],
  always: {
    // No component is a class.
    "(s=V.prototype)&&s.render": no,
    "C?r.__c=…": "r.__c=d=new x(M,L),d.constructor=V,d.render=K",
    "C?25:0": "0",
    "C&&(d.__s||…": no,
    "C&&(y.push…": no,
    "C&&!V.getDerivedStateFromProps&&d.componentWillMount&&…": no,
    "C&&d.componentDidMount&&…": no,
    "C&&d.componentDidUpdate&&…": no,
    "C&&u.__c&&d.getSnapshotBeforeUpdate&&…": no,
    "M!==k&&C&&…": no,
    "d.componentWillUpdate&&…": no,
    "i.componentWillUnmount": no,
    "r.shouldComponentUpdate": "void 0",
    // None catches what another throws, shares what it knows or draws elsewhere.
    "(e=(o=i.constructor)&&o.getDerivedStateFromError)&&…": no,
    "i.componentDidCatch&&…": no,
    "e&&8&i.__g": no,
    "(s=V.contextType)&&i[s.__c]": "0",
    "s?j?j.props.value:s.__:i": "i",
    "j&&j.sub(d)": no,
    "d.getChildContext&&…": no,
    "M.__P&&…": no,
    "n.props.__P": no,
    "t.props.__P": no,
    // State is set by hooks alone, and none of them starts from a state that is worked out.
    '"function"==typeof n&&(n=…': no,
    "i?i(u):G(void 0,u)": "G(void 0,u)",
    // Nothing waits while it is drawn.
    "128&u.__u&&…": no,
    "p&&p.some(g)": no,
    "t&&t.then": no,
    "!u&&(i=t.__c)&&…": no,
    '!t.data.startsWith("$s")': yes,
    // No server has drawn anything before.
    "32&u.__u": "0",
    "t&&32&t.__u": "0",
    "l&&(n.__m&&…": no,
    "!l&&o": "o",
    'l&&"function"!=typeof k': no,
    "l&&t.data==x": no,
    'l&&"textarea"!=C': no,
    "9==r.nodeType&&…": no,
    // No drawing has markup as a text, a formula, HTML inside a picture, a template or a value to start from.
    '"dangerouslySetInnerHTML"==s': no,
    "l||y&&…": "0",
    'y&&(t.textContent="")': no,
    '"math"==C': no,
    '("foreignObject"==C||…': no,
    '"template"==C&&t.content||t': "t",
    '"textarea"==C&&null!=x.defaultValue': no,
    '"value"==s&&"defaultValue"in x': no,
    '"checked"==s&&"defaultChecked"in x': no,
    't.replace(/xlink(H|:h)/,"h").replace(/sName$/,"s")': "t",
    '"popover"==t&&1==r?"":r': "r",
    // No tool looks on, and every browser has frames.
    "!o&&n.vnode&&…": no,
    "n.vnode&&n.vnode(r)": no,
    "n.event?n.event(r):r": "r",
    "n.debounceRendering": "void 0",
    "r=function(n){return null!=n&&…": "0",
    "a.requestAnimationFrame": "void 0",
    "a.__h&&…": no,
    "!a.__s": yes,
    "v&&v(n)": no,
    "l&&l(n)": no,
    "m&&m(n)": no,
    "h&&h(n,t)": no,
    "s&&s(n)": no,
    "p&&p(n,t)": no,
    '"function"==typeof requestAnimationFrame': yes,
  },
};

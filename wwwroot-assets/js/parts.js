// The parts of the answered hat: a tap on hat, piece or row opens the part's menu, arrow keys step through the parts, and wool is dragged from one to
// another. The page is complete without it: every menu is a link, every act in it too.
(() => {
  const page = () => document.querySelector(".can-i-make");
  const rows = () => [...document.querySelectorAll(".can-i-make .row[data-part]")];
  const rowOf = part => document.querySelector(`.can-i-make .row[data-part="${CSS.escape(part)}"]`);
  const light = part => document.dispatchEvent(new CustomEvent("part:keep", { detail: part }));
  const ask = address => document.dispatchEvent(new CustomEvent("answer:ask", { detail: address }));
  let opener = null, loading = null;

  // The menu.
  function close(focus = true) {
    loading?.abort();
    const menu = document.querySelector(".can-i-make .menu");
    if (!menu) return;
    menu.remove();
    light(null);
    if (focus && opener?.isConnected) opener.focus({ preventScroll: true });
    opener = null;
  }

  async function open(part, address, at = null, from = null) {
    close(false);
    light(part);
    const mine = loading = new AbortController();
    let menu;
    try {
      const response = await fetch(address, { signal: mine.signal, headers: { accept: "text/html" }, credentials: "same-origin" });
      menu = new DOMParser().parseFromString(await response.text(), "text/html").querySelector(".menu");
    } catch { return; }
    if (loading !== mine || !menu) { if (!menu) location.assign(address); return; }
    const place = at ? document.querySelector(".hat-stage") : rowOf(part)?.querySelector(".change-it");
    if (!place) return;
    opener = from ?? rowOf(part)?.querySelector(".dots");
    place.append(document.adoptNode(menu));
    if (at) {
      const box = place.getBoundingClientRect();
      menu.classList.add("at-hat");
      menu.style.left = Math.max(0, Math.min(at.x - box.left + 12, box.width - menu.offsetWidth)) + "px";
      const lowest = innerHeight - 8 - menu.offsetHeight - box.top;
      menu.style.top = Math.max(8 - box.top, Math.min(at.y - box.top + 14, lowest)) + "px";
    }
    menu.querySelector("a.act, select")?.focus({ preventScroll: true });
    if (!at && matchMedia("(min-width: 44.01rem)").matches) menu.scrollIntoView({ block: "nearest" });
  }

  const parts = ".can-i-make :is(.areas a, .piece .part, .alone .part, .row)";
  const partAt = element => element instanceof Element ? element.closest(parts)?.dataset.part ?? null : null;

  document.addEventListener("click", event => {
    if (!(event.target instanceof Element) || !page()?.contains(event.target)) return;
    if (event.target.closest(".menu .shut")) { event.preventDefault(); event.stopImmediatePropagation(); close(); return; }
    if (event.target.closest(".menu")) return;
    const hat = event.target.closest(".areas a, .piece .part, .alone .part");
    const bare = event.target.closest("a, button, select") ? null : event.target.closest(".row")?.querySelector(".dots");
    const dots = event.target.closest(".dots") ?? bare;
    if (event.button || event.ctrlKey || event.metaKey || event.shiftKey || !(hat || dots)) { close(false); return; }
    event.preventDefault();
    event.stopImmediatePropagation();
    const part = partAt(event.target);
    const address = rowOf(part)?.querySelector(".dots")?.href.split("#")[0];
    if (address) open(part, address, hat && !hat.closest(".piece") ? { x: event.clientX, y: event.clientY } : null, hat?.closest(".pic") ?? null);
  }, true);

  document.addEventListener("answer:new", () => { opener = null; dress(); });

  // With scripts the hat's parts are not links beside the rows' buttons, which do the same.
  function dress() {
    for (const area of document.querySelectorAll(".can-i-make .areas a")) {
      area.removeAttribute("href");
      area.removeAttribute("tabindex");
    }
    const element = turnable();
    if (!element || element.hasAttribute("role")) return;
    const now = ((stage().dataset.turn * 60 % 360) + 360) % 360;
    const says = { role: "slider", tabindex: "0", "aria-label": element.dataset.label, "aria-valuemin": "0", "aria-valuemax": "360", "aria-valuenow": now };
    for (const [name, value] of Object.entries(says)) element.setAttribute(name, value);
    element.setAttribute("aria-valuetext", element.dataset.sides.split("|")[0]);
    element.addEventListener("focus", wake);
  }

  // The hat turns under the hand: from the first touch on it is painted here; its codes and parts come from the program when it rests.
  let wool = null, woolOf = null;
  const turnable = () => document.querySelector(".can-i-make .turnable:not(.before)");
  const stage = () => document.querySelector(".can-i-make .hat-stage");
  async function wake() {
    const element = turnable();
    if (!element || woolOf === element) return;
    wool?.stop();
    [wool, woolOf] = [null, element];
    const { mountWool } = await import(new URL("js/wool.js", document.baseURI));
    if (woolOf !== element) return;
    const { label, front, sides, model } = element.dataset, { view, turn } = stage().dataset;
    const tilt = view === "above" ? 76 * Math.PI / 180 : undefined;
    wool = mountWool(element, JSON.parse(model), { label, front, sides: sides.split("|"), dragTurns: false, yaw: -0.26 + turn * Math.PI / 3, tilt });
  }
  document.addEventListener("pointerover", event => { if (event.target instanceof Element && event.target.closest(".hat-stage")) wake(); });

  async function look(link) {
    const address = link.href;
    await wake();
    if (!wool) { location.assign(address); return; }
    close(false);
    const pic = document.querySelector(".can-i-make .pic");
    pic.classList.add("turned");
    if (link.dataset.turn) wool.turn(link.dataset.turn * Math.PI / 3); else wool.look(link.dataset.view === "above" ? "above" : "front");
    let fresh;
    try { fresh = new DOMParser().parseFromString(await (await fetch(address, { credentials: "same-origin" })).text(), "text/html"); } catch { return; }
    const now = fresh.querySelector(".hat-stage"), focused = document.activeElement?.closest(".turn a");
    if (!now?.querySelector(".turnable") || !pic.isConnected) return;
    Object.assign(stage().dataset, now.dataset);
    const places = ".areas, .codes";
    for (const old of pic.querySelectorAll(places)) old.remove();
    pic.append(...[...now.querySelectorAll(places)].map(e => document.adoptNode(e)));
    stage().querySelector(".turn").replaceWith(document.adoptNode(now.querySelector(".turn")));
    const of = focused?.dataset.turn ? "turn" : "view";
    if (focused) stage().querySelector(`.turn [data-${of}="${focused.dataset[of]}"]`)?.focus();
    dress();
    pic.classList.remove("turned");
  }
  document.addEventListener("click", event => {
    const link = event.target instanceof Element ? event.target.closest(".can-i-make .turn a") : null;
    if (!link || event.button || event.ctrlKey || event.metaKey || event.shiftKey || !turnable() || link.dataset.view === "piece") return;
    event.preventDefault();
    event.stopImmediatePropagation();
    look(link);
  }, true);

  // Keys: on the hat, from row to row, and within the menu.
  document.addEventListener("keydown", event => {
    if (event.key === "Escape" && document.querySelector(".can-i-make .menu")) { event.preventDefault(); close(); return; }
    if (!(event.target instanceof Element) || event.ctrlKey || event.altKey || event.metaKey) return;
    const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
    if (step && event.target.matches(".turnable")) {
      event.preventDefault();
      event.stopImmediatePropagation();
      const views = { ArrowUp: "above", ArrowDown: "head" }[event.key];
      look(stage().querySelector(views ? `.turn [data-view="${views}"]` : `.turn [data-turn="${step}"]`));
      return;
    }
    if (!step) return;
    const items = event.target.closest(".menu") ? [...document.querySelectorAll(".can-i-make .menu :is(a.act, select)")]
      : event.target.matches(".row .dots") ? rows().map(r => r.querySelector(".dots")) : null;
    if (!items || event.target.matches("select")) return;
    event.preventDefault();
    items[(items.indexOf(event.target) + step + items.length) % items.length]?.focus();
  }, true);

  // Dragging: a leftover onto a part, or a part's yarn onto another part, which gets the other's in return.
  const from = element => {
    const yarn = element.closest("[data-yarn]");
    if (yarn) return { yarn: yarn.dataset.yarn, part: yarn.dataset.of ?? null, code: (yarn.matches(".code") ? yarn : yarn.querySelector(".code")) };
    const part = partAt(element), code = part && rowOf(part)?.querySelector(".code[data-yarn]");
    return code ? { yarn: code.dataset.yarn, part: code.dataset.of, code } : null;
  };
  const onto = (x, y) => {
    const under = document.elementFromPoint(x, y);
    const code = under?.closest(".row .code[data-of]");
    if (code) return { part: code.dataset.of, row: code.closest(".row").dataset.part, yarn: code.dataset.yarn };
    const row = partAt(under), first = row && rowOf(row);
    return first ? { part: first.dataset.parts.split("|")[0], row, yarn: first.querySelector(".code[data-of]")?.dataset.yarn ?? null } : null;
  };
  let held = null, ghost = null, press = 0, started = null;

  const mark = row => {
    for (const e of document.querySelectorAll(".can-i-make :is(.row, .areas a)")) e.classList.toggle("over", !!row && e.dataset.part === row);
  };
  function lift(x, y) {
    clearTimeout(press);
    ghost = document.createElement("div");
    ghost.className = "carried";
    ghost.textContent = held.code?.textContent ?? "";
    ghost.style.setProperty("--y", held.code ? getComputedStyle(held.code).getPropertyValue("--y") : "currentColor");
    document.body.append(ghost);
    document.documentElement.classList.add("carrying");
    navigator.vibrate?.(12);
    move(x, y);
  }
  function move(x, y) {
    ghost.style.transform = `translate(${x + 8}px, ${y + 10}px)`;
    const over = onto(x, y);
    mark(over && over.part !== held.part ? over.row : null);
  }
  function drop(x, y) {
    const target = onto(x, y), what = held;
    end();
    if (!target || target.part === what.part || target.yarn === what.yarn) return;
    const asked = new URL(page().dataset.address, location.origin);
    const pairs = asked.searchParams;
    const [locks, back, never, like] = page().dataset.names.split(" ");
    const say = (part, yarn) => [part, yarn].map(t => t.replaceAll("%", "%25").replaceAll("~", "%7E")).join("~");
    const set = (name, values) => { pairs.delete(name); for (const value of values) pairs.append(name, value); };
    const swaps = what.part && target.yarn;
    const others = pairs.getAll(locks).filter(k => ![target.part, what.part].includes(k.split("~")[0]));
    set(locks, [...others, say(target.part, what.yarn), ...(swaps ? [say(what.part, target.yarn)] : [])]);
    set(back, pairs.getAll(back).filter(b => b !== what.yarn));
    set(never, pairs.getAll(never).filter(n => n !== say(target.part, what.yarn) && !(swaps && n === say(what.part, target.yarn))));
    set(like, [...document.querySelectorAll(".can-i-make .row .code[data-of]")].map(code => say(code.dataset.of, code.dataset.yarn)));
    pairs.delete("share");
    if (page().dataset.stripes) pairs.set("stripes", page().dataset.stripes);
    ask(asked.pathname + "?" + pairs);
  }
  function end() {
    clearTimeout(press);
    ghost?.remove();
    mark(null);
    document.documentElement.classList.remove("carrying");
    held = ghost = started = null;
  }

  document.addEventListener("pointerdown", event => {
    if (event.button || !(event.target instanceof Element) || !page()?.contains(event.target)) return;
    if (event.target.closest(".menu, .dots, .turn, button, select, input, summary")) return;
    held = from(event.target);
    if (!held) return;
    started = { x: event.clientX, y: event.clientY, touch: event.pointerType === "touch" };
    if (started.touch) press = setTimeout(() => held && lift(started.x, started.y), 350);
  });
  document.addEventListener("pointermove", event => {
    if (!held) return;
    const far = Math.hypot(event.clientX - started.x, event.clientY - started.y);
    if (ghost) { event.preventDefault(); move(event.clientX, event.clientY); }
    else if (started.touch ? far > 10 : far > 6) { if (started.touch) end(); else lift(event.clientX, event.clientY); }
  });
  document.addEventListener("pointerup", event => {
    if (!ghost) { end(); return; }

    // The click that follows a drop is none.
    const none = e => { e.preventDefault(); e.stopImmediatePropagation(); };
    addEventListener("click", none, true);
    setTimeout(() => removeEventListener("click", none, true), 0);
    drop(event.clientX, event.clientY);
  });
  document.addEventListener("pointercancel", end);
  document.addEventListener("touchmove", event => { if (ghost) event.preventDefault(); }, { passive: false });
  document.addEventListener("contextmenu", event => { if (started?.touch) event.preventDefault(); });
  document.addEventListener("dragstart", event => {
    if (event.target instanceof Element && event.target.closest(".can-i-make :is(.pic, .row, .piece, .unused)")) event.preventDefault();
  });
  addEventListener("keydown", event => { if (event.key === "Escape" && held) end(); });

  // "5 more ways" opens its fold; the fold for what is asked more rarely closes when something else is pressed.
  document.addEventListener("click", event => {
    const link = event.target instanceof Element ? event.target.closest("[data-opens]") : null;
    const fold = link && document.getElementById(link.dataset.opens);
    if (fold) {
      event.preventDefault();
      fold.open = true;
      fold.scrollIntoView({ block: "start" });
      fold.querySelector("summary").focus({ preventScroll: true });
    }
    const more = document.querySelector(".can-i-make .more[open]");
    if (more && !more.closest(".ask").contains(event.target) && matchMedia("(min-width: 44.01rem)").matches) more.open = false;
  });

  dress();
})();

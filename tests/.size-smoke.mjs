import { launch, PHONE } from "/work/main/tests/e2e/browser.mjs";
const b = await launch(); const ctx = await b.newContext({...PHONE, baseURL:"http://127.0.0.1:8455"}); const p = await ctx.newPage();
const errs=[]; p.on("console", m=>{ if(m.type()==="error"||m.type()==="warning") errs.push(m.text()); }); p.on("pageerror", e=>errs.push("PAGE "+e));
await p.goto("http://127.0.0.1:8455/"); await p.click("#open-demo"); await p.waitForSelector("#verdict"); console.log("verdict:", await p.textContent("#verdict"));
await p.waitForTimeout(500); await p.screenshot({path:"/tmp/size-day.png", fullPage:true});
await p.goto("http://127.0.0.1:8455/#/press"); await p.waitForTimeout(800);
await p.screenshot({path:"/tmp/size-press.png"});
const n = async()=>Number((await p.textContent("#count")).trim()); const a=await n(); await p.tap("#zone"); await p.waitForTimeout(700); console.log("count", a, await n());
await p.tap("#misprint"); await p.waitForSelector("dialog[open]"); await p.click("dialog .icon-button"); await p.waitForTimeout(300); console.log("dialogs left", await p.locator("dialog").count());
for (const h of ["#/jobs","#/job/new","#/more","#/more/settings","#/more/backup","#/more/about","#/"]) { await p.goto("http://127.0.0.1:8455/"+h); await p.waitForTimeout(400); console.log(h, (await p.textContent("#heading")), (await p.locator("main *").count())); }
await p.goto("http://127.0.0.1:8455/#/job/new"); await p.fill("#client","Zed"); await p.fill("#title","Hats"); await p.click("button[type=submit]"); await p.waitForTimeout(600); console.log(await p.url(), await p.textContent("#heading"));
await p.goto("http://127.0.0.1:8455/#/more/settings"); await p.waitForTimeout(300); await p.locator("text=Español").first().click(); await p.waitForTimeout(500); console.log("es:", await p.textContent("#heading"));
await p.screenshot({path:"/tmp/size-set.png", fullPage:true});
console.log("errors", errs); await b.close();

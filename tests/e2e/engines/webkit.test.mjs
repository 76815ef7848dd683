import { DIST } from "../support/setup.mjs";
import { testJourney } from "./journey.mjs";
import * as webkit from "./webkit.mjs";

testJourney(webkit, DIST, "webkit2gtk-driver, gir1.2-webkit2-4.1, python3-gi and xvfb");

import { DIST } from "../support/setup.mjs";
import * as firefox from "./firefox.mjs";
import { testJourney } from "./journey.mjs";

testJourney(firefox, DIST, "firefox-esr");

// The texts of the help: the course, the words, the cautions.

export const help = {
  title: "Help",
  back: "Back",
  contents: "Parts of the help",
  whatIs: (name) => `What is this? ${name}`,
  more: "More in the help",

  course: {
    title: "Scoring in eight pictures",
    link: "Course",
    lessons: {
      strings: {
        name: "String lines",
        picture: "A round loaf from above: strings pressed across it mark eight spokes, and one string is held taut by its two ends.",
        text: "Pull a string taut over the crown and press it in lightly. Four string lines through the crown give eight even spokes to score by. They are guides only: do not cut along them unless the pattern does.",
      },
      "light-first": {
        name: "Shallow cuts first",
        picture: "Two loaves from above: first the shallow veins of six leaves, then the deep leaf outlines.",
        text: "Make the shallow, decorative cuts first and the deep expansion cuts last. A deep cut lets the skin go slack, and a blade drags on slack skin. A cold loaf cuts cleanest.",
      },
      blade: {
        name: "Blade angle",
        picture: "A blade upright in the dough, whose cut opens evenly, beside a blade at 40°, whose cut lifts an ear.",
        text: "Held upright, at 90°, the blade makes a cut that opens evenly and gives no ear. Held at 30° to 45° it slides under the skin, and the flap it leaves can lift into an ear. Keep one angle through the whole stroke.",
      },
      depth: {
        name: "Depth",
        picture: "A loaf seen from the cut side: decorative cuts 2 to 4 mm deep beside an expansion cut 6 to 13 mm deep.",
        text: "Decorative cuts are about 2 to 4 mm deep (⅛ in): they draw a figure and open little. Expansion cuts are about 6 to 13 mm deep (¼ to ½ in) and give the loaf room to spring. Past about 15 mm (0.6 in) little is gained and the loaf may sag.",
      },
      order: {
        name: "Order of cuts",
        picture: "A loaf on a turntable before you: a stroke is pulled toward you, and the table turns for the next.",
        text: "Pull each stroke toward yourself, then turn the loaf to the next one; do not reach around it. So your hand stays clear of finished cuts. The bench card and the Bench view give every cut in its order.",
      },
      steam: {
        name: "Steam",
        picture: "A loaf in a covered pot full of steam, then the lid is off and the loaf browns.",
        text: "Steam keeps the skin supple while the loaf springs: the cuts open wider and an ear lifts better. Without it the skin sets early: cuts open less, and the growth that is left may burst at the side or the foot. A covered pot holds the loaf’s own steam. Then take the lid off, or vent the steam, and the crust can brown.",
      },
      card: {
        name: "Reading the bench card",
        picture: "One row of a bench card: the step, which cut, how deep, the blade angle, how many, and the turn to the next.",
        text: "Read one row at a time, from left to right. It shows the cut on the loaf, how deep it goes, the blade angle, how many to make and how far to turn. Cuts have the same numbers on the guide, the card and this page.",
      },
      measure: {
        name: "Measuring your loaf",
        picture: "A loaf from above with its width and length, and from the side with its height and its reach over the dough.",
        text: "Measure the proofed loaf: its width and length seen from above, its height from the bench to the crown, and its reach, a tape laid over the dough from the crown to the rim. Enter them under Loaf. When the baked loaf is cold, measure the greatest width of some cuts and compare them with the model.",
      },
    },
  },

  glossary: {
    title: "Words used here",
    link: "Words",
    forms: "Forms and stencils",
    groups: [
      {
        title: "Loaf and dough",
        terms: {
          boule: ["Boule", "A round loaf."],
          batard: ["Batard", "A loaf shaped longer than wide, plump in the middle: an oval loaf here."],
          banneton: ["Banneton, or proofing basket", "The basket a shaped loaf rises in. Its size tells how large the loaf is when you turn it out."],
          proof: ["Proof", "The last rise before the oven. A sourdough is ready at 1.5 to 2 times its mixed volume, a yeasted dough at about double. Underproofed dough springs most and tears where it is not cut. Overproofed dough springs little: its cuts barely open and the loaf may sag, so make them fewer and shallower."],
          hydration: ["Hydration", "Water as a share of the flour’s weight. Wetter dough spreads faster: the loaf stands lower and leaves less time to score."],
          crown: ["Crown", "The top of the loaf, in the middle. Patterns are measured from it."],
          rim: ["Rim", "The outline of the loaf, where it meets the bench."],
          reach: ["Reach", "The way over the dough from the crown to the rim, measured with a tape or a string. A size such as 60% is that share of it, so a pattern grows and shrinks with the loaf."],
          spring: ["Oven spring", "The loaf’s growth in the oven, as baked volume over proofed volume. About 1.4 is common for a ready loaf, more for an underproofed one."],
          spread: ["Sideways spread", "How much of the oven spring goes sideways and not up. At 0% the loaf only rises; at 100% it only widens. A wet or slack dough spreads more."],
          pot: ["Dutch oven, or covered pot", "A heavy pot with a lid. It traps the loaf’s own steam for the first part of the bake."],
          skin: ["Skin", "The drier outside of the proofed loaf. It stretches as the loaf springs until the crust sets, and the cuts open in it."],
          crumb: ["Crumb", "The inside of the baked loaf."],
        },
      },
      {
        title: "Cuts and blade",
        terms: {
          lame: ["Lame", "The baker’s blade: a razor blade on a handle, straight or curved. Say “lahm”."],
          upright: ["Upright", "The blade at 90° to the dough. Any other angle is given with the side the handle leans to."],
          expansion: ["Expansion cut", "A deep cut that opens in the oven and gives the loaf room to spring."],
          decorative: ["Decorative cut", "A shallow cut that draws a figure and opens little."],
          ear: ["Ear", "The crisp flap that lifts along one edge of a slanted cut."],
          mouth: ["Mouth", "The gap a cut opens to in the oven. Its greatest width is what you measure."],
          "string-line": ["String line", "A line pressed lightly into the dough with a taut string before the first cut. A string over the crown marks two spokes."],
          turntable: ["Turntable", "A stand that turns the loaf under your hand. Degrees on its dial run clockwise from 12 o’clock, the side away from you."],
        },
      },
      {
        title: "In scorecraft",
        terms: {
          knob: ["Knob", "A number of the pattern with a slider: how many leaves, how deep a cut."],
          room: ["Room", "The share of the oven spring that the cuts can take up. With enough room the loaf opens where you scored it; with too little it bursts, often at the side. Room is a model estimate: use it to compare designs."],
          tension: ["Tension", "The pull left in the skin once the cuts have opened, as a share of the pull in an uncut loaf. The darker a place, the less room it has, and the likelier a burst starts there. It is always high at the tip of a cut, which may tear further. Tension is a model estimate."],
          guide: ["Guide", "A sheet with the loaf at full size and its cuts numbered and listed. Keep it beside the loaf: look at it, do not lay it on dough."],
          card: ["Bench card", "The cuts in order, one row a turn of the table, to read at arm’s length."],
          stencil: ["Stencil", "A sheet with slots, to dust flour or cocoa through. Use only food-contact film. Check that it is safe for your cutter or laser: some plastics give off poisonous fumes or burn."],
          drape: ["Drape", "The pattern at its true length on paper that folds along its darts, so that it lies on the dome as no flat sheet can. Trace it onto clean baking paper along a clean edge, and lay that on the loaf pencil side up, away from the dough."],
          dart: ["Dart", "A wedge that is folded or cut out of a drape, so that flat paper follows the dome."],
          ring: ["Turntable ring", "A paper ring of degrees that shows where each figure begins. It lies on the turntable under the baking paper; remove it before the loaf goes into the oven."],
          practise: ["Practice sheets", "Strokes at full size, to trace and then to do freehand: straight ones, bends, leaves and blade angles, and the hardest strokes of your pattern. Start with a pen; put a board under the paper before you take a blade."],
          cutter: ["Cutter file", "Plain lines in millimetres for a craft cutter or a laser: SVG, or DXF, whose numbers are millimetres too."],
        },
      },
    ],
  },

  safety: {
    title: "Before you cut and bake",
    link: "Safety",
    cautions: [
      ["Blade", "Razor blades are very sharp. Cut away from your other hand and cap the blade whenever you put it down. Used blades go into a rigid sharps container. If the blade sticks, dip it in oil or water; never wipe it with a finger or cloth."],
      ["Pot and steam", "The pot, its lid and the steam burn: wear dry oven gloves and long sleeves, and keep your face and arms clear of the lid."],
      ["Paper and plastic", "Keep paper and ink off the dough: look at a sheet, do not lay it on dough. Use only food-contact film. Check that it is safe for your cutter or laser: some plastics give off poisonous fumes or burn."],
      ["Food", "Raw flour and raw dough are not ready to eat. List allergens, and follow your local rules when you bake to sell or give away."],
      ["The model", "Openings, tension and room come from a model and are estimates. Compare designs by them, then trust your own bakes."],
    ],
  },

  language: {
    title: "The pattern language",
    link: "Language",
    lead: "The words of a pattern text, by what you want to do, with an example of each.",
    loading: "Fetching the words…",
    away: "The server is not responding, so its words cannot be shown.",
    attributes: "Say how a cut is made",
  },
};

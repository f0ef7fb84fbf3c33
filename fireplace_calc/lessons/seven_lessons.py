"""Seven lessons on the rules of a chimney: the reason in our own words, what to look at, what to
move.
"""

from __future__ import annotations

from fireplace_calc.build.notes import Caution, cautions
from fireplace_calc.lessons.lesson_records import Lesson

LINER = "liner"
"""Stands among the inputs of a lesson for shape and size of the flue, which are chosen together."""


LESSONS: dict[str, Lesson] = {
    lesson.key: lesson
    for lesson in (
        Lesson(
            "flue",
            "Flue size",
            (
                (
                    "An open fire takes in air over the whole of its opening, many times what it"
                    " needs to burn. All of that goes up the flue. Widen the opening and there is"
                    " more to carry; where the flue cannot carry it, the smoke that is left over"
                    " comes into the room."
                ),
                (
                    "Smoke turns as it climbs and leaves the corners of a square flue nearly idle;"
                    " a flat flue has much wall for little area, and wall holds it back. So the"
                    " ratio is kindest to a round flue and hardest on a flat one. What counts is"
                    " the inside: a liner's name is its outside."
                ),
                (
                    "A raised firebox is a taller opening. It is the change most easily forgotten"
                    " when the flue is sized."
                ),
            ),
            (
                "Flue for the opening",
                "Throat and flue",
                "Throat over the opening",
                "Lean of the flue",
            ),
            "section",
            ("THR-02", "THR-01", "THR-04"),
            ("FLU-10", "FLU-11", "FLU-12", "FLU-13", "THR-01", "THR-02", "THR-03", "THR-04"),
            ("opening.width", "opening.extension", "throat.height", "throat.depth", LINER),
            ("flue", "throat"),
            ("CO",),
        ),
        Lesson(
            "roof",
            "Height above the roof",
            (
                (
                    "Wind that meets a roof has to climb over it. On the side it strikes, and in"
                    " front of anything higher, it piles up and presses down; behind a ridge it"
                    " turns over and comes down again. Wind there can push smoke back down."
                ),
                (
                    "So there are two heights. One is over the roof where the chimney comes out,"
                    " for snow, for sparks, and for the slow air that clings to a surface. The"
                    " other is over whatever stands within reach: a ridge, a dormer, the house next"
                    " door. Both hold, and the one that asks for more decides."
                ),
                (
                    "Reach is measured level, from the chimney's nearest face; a tape laid along"
                    " the roof stops short. A steep roof climbs a long way within it."
                ),
            ),
            (
                "Top over the roof at the chimney",
                "Top over what stands near",
                "Least height of the chimney",
                "Liner over the top",
                "Crown or capping",
                "Standing by itself",
            ),
            "roof",
            ("ROF-02", "ROF-01"),
            ("ROF-01", "ROF-02"),
            ("flue.sections", "roof.ridge_distance", "roof.ridge_level", "roof.position"),
            ("roof",),
            ("heights", "fire"),
        ),
        Lesson(
            "clearances",
            "Clearances",
            (
                (
                    "Wood that is warmed day after day dries out, browns, and slowly turns into"
                    " something that lights far below the heat that would light a new board."
                    " Nothing happens for years, and then it does. The air space is there so that"
                    " the framing never gets that warm."
                ),
                (
                    "Air works because it moves and carries the heat off. Filled with mortar,"
                    " rubble or insulation the space is a bridge. The back of the firebox is the"
                    " hottest wall, so it gets the widest space."
                ),
                (
                    "On the face, wood sees the fire itself. Near the opening nothing that burns"
                    " may stand at all; a little farther off it may stand out a little, and the"
                    " farther away the more: a deep shelf close by sits in the rising heat."
                ),
            ),
            (
                "Framing behind the firebox",
                "Framing at the chimney",
                "Mantel",
                "Firebox wall",
                "Chimney wall",
            ),
            "front",
            ("CLR-07", "CLR-02", "FBX-01"),
            ("CLR-01", "CLR-02", "CLR-20", "CLR-07", "CLR-08", "FBX-01"),
            (
                "clearance.front",
                "clearance.side",
                "clearance.back",
                "clearance.chimney",
                "firebox.wall",
            ),
            ("mantel",),
            ("fire",),
        ),
        Lesson(
            "hearths",
            "Hearths",
            (
                (
                    "A log rolls, a knot bursts, and something red lands on the floor. The hearth"
                    " extension is the floor it may land on. A larger opening has a larger fire"
                    " that throws farther: past a certain size it has to be larger, in front and"
                    " at the sides."
                ),
                (
                    "That size is the clear opening, six square feet and no less. Raise the firebox"
                    " a few inches and an opening can pass it without getting any wider."
                ),
                (
                    "Under the fire it is heat that counts and not sparks: embers lie there for"
                    " hours, and it creeps downward. A fire that stands well above the extension"
                    " warms it less, so the extension may be thin; it may not be smaller."
                ),
            ),
            ("Hearth in front", "Hearth beside", "Hearth thickness"),
            "plan",
            ("HTH-07", "HTH-05", "HTH-08", "HTH-06", "HTH-03", "HTH-02"),
            ("HTH-02", "HTH-03", "HTH-04", "HTH-05", "HTH-06", "HTH-07", "HTH-08"),
            ("opening.width", "opening.extension", "hearth.front", "hearth.side", "hearth.drop"),
            ("hearth",),
            ("fire",),
        ),
        Lesson(
            "smoke chamber",
            "Smoke chamber",
            (
                (
                    "Between a wide throat and a narrow flue the smoke has to be gathered. It"
                    " follows a wall that leans gently and breaks away from one that leans much;"
                    " where it breaks away it rolls, loses its heat, and some of it comes back"
                    " down."
                ),
                (
                    "Corbelled brick is a flight of small steps: every one trips the smoke and"
                    " holds soot. So brick left in steps has to stand steeper than a smooth face. A"
                    " chamber can also be too tall; then the smoke cools before the flue takes it."
                ),
                (
                    "When the fire is high, flame reaches in here, and the soot on the walls is"
                    " fuel. That is why the walls are thick, and why a coat of parging is no"
                    " lining."
                ),
            ),
            ("Slope of the smoke chamber", "Smoke chamber wall"),
            "section",
            ("SMK-04",),
            ("SMK-01", "SMK-02", "SMK-04", "SMK-05", "SMK-06"),
            (
                "smoke_chamber.height",
                "smoke_chamber.wall",
                "smoke_chamber.construction",
                "opening.width",
            ),
            ("chamber",),
            ("fire", "silica"),
        ),
        Lesson(
            "heat",
            "Heat and wood",
            (
                (
                    "The clearance of the code stands, whatever anybody figures. What follows says"
                    " what it buys, and is engineering judgement. Heat crosses a closed gap by"
                    " radiation, so a wide one holds back no more than a narrow one: the width"
                    " keeps wood from touching, leaves room for a mason's tolerance, for air to"
                    " move, and for looking in."
                ),
                (
                    "What counts is masonry, hours and air. Four inches more masonry cool the wood"
                    " by tens of degrees and let the heat come hours later. Air that really moves"
                    " through the gap carries heat off; nobody knows how much moves in a gap once"
                    " it is closed in. A fire kept up for a day is another load than an evening's."
                ),
                (
                    "The wood is hottest hours after the fire is out: the wall goes on giving what"
                    " it took in. Cold ashes say nothing about the studs. After a soot fire, stay"
                    " and look for a day."
                ),
            ),
            (
                "Framing behind the firebox",
                "Framing at the chimney",
                "Firebox wall",
                "Lining thickness",
            ),
            "plan",
            ("CLR-02", "FBX-01"),
            ("CLR-02", "CLR-20", "FBX-01", "FBX-03"),
            ("clearance.back", "clearance.chimney", "firebox.wall"),
            ("wood",),
            ("fire",),
        ),
        Lesson(
            "draft",
            "Draft",
            (
                (
                    "A flue full of warm gas weighs less than the same column of cold air outdoors."
                    " The difference is all the pull there is: 6 to 21 Pa in a house's chimney,"
                    " the weight of one or two millimeters of water. It grows with the height and"
                    " with the difference of temperature, and with nothing else."
                ),
                (
                    "From it every corner, rough wall and narrow place takes its share, and"
                    " whatever the house's fans pull the other way. What is left has to bring air"
                    " in over the whole opening fast enough to hold the smoke. On a mild evening it"
                    " fails first."
                ),
                (
                    "This is physics and judgement, not code. The code's answer is the ratio of the"
                    " first lesson; it folds the weather of a whole country into one number."
                ),
            ),
            ("Outdoor air", "Least height of the chimney", "One fire to a flue"),
            "draft",
            (),
            ("AIR-07",),
            (
                "flue.sections",
                "opening.width",
                "opening.extension",
                "house.exhaust",
                "house.air_inlet",
            ),
            ("draft",),
            ("CO",),
        ),
    )
}
"""In the order they are taught."""


def warned(lesson: Lesson) -> tuple[Caution, ...]:
    """What can hurt somebody who puts a lesson into practice."""
    return tuple(caution for caution in cautions() if caution.topic in lesson.cautions)

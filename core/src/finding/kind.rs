/// What was noticed, whatever the words and the numbers: what a program asks instead of reading
/// the message.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Kind {
    /// A section is larger than the bar and must be upset.
    NeedsUpsetting,
    /// A section is wider than plain blows spread the bar.
    NeedsSpreading,

    /// The boss is thicker than the bar.
    BossOverBar,
    /// The boss is thinner than half the bar.
    BossThin,
    /// Jaw and rein must be bent towards or away from the other half.
    NeedsJoggle,
    /// The hole is wider than the boss.
    HoleBreaksOut,
    /// The hole is nearer to the edge than the standard allows.
    HoleNearEdge,
    /// The wall around the hole is thin.
    HoleWallThin,
    /// The rivet does not go into its hole.
    RivetOverHole,
    /// The rivet has much play.
    RivetLoose,
    /// The rivet's head stands over the boss.
    HeadOverBoss,
    /// The rivet's head sinks deep into the boss.
    HeadSinksDeep,

    /// The jaws meet before they hold.
    JawsMeet,
    /// The jaws pass through each other.
    JawsCross,
    /// The jaw begins inside the sweep of the other boss.
    HeelStrikesBoss,
    /// The work rides on the edges of the groove.
    WorkOnEdges,
    /// The work bottoms in the V.
    WorkBottoms,
    /// The work is gripped over less than its thickness.
    GripShort,
    /// Wide work tips in the grip.
    WorkTips,
    /// The tip cannot be broken as far as was asked.
    TipRadiusOverRoom,
    /// The jaw bends tighter than its steel is deep.
    JawFolds,
    /// The jaw's outline crosses itself.
    JawOutlineCrosses,
    /// The halves are not the same piece although their jaws are alike.
    HalvesDiffer,
    /// Work beside the tongs does not pass boss and rivet.
    WorkStrikesBoss,

    /// The sizes of the work contradict each other.
    WorkCannotBe,
    /// The head of a bolt does not go between the jaws behind the bits.
    HeadWithoutRoom,
    /// The ribs of rebar lift the jaws.
    RibsLift,
    /// The jaws are wider than the leg of an angle is free.
    JawOverLeg,
    /// The squeeze crushes pipe.
    PipeCrushed,

    /// A corner, crease, groove, notch or riser has less room than was asked.
    DetailOverRoom,
    /// The jaw is too short for what is in it.
    JawShort,
    /// A part of the jaw is so slim or wide that it bends or curls.
    JawSlender,
    /// The jaw steps aside too steeply.
    StepsAsideSteeply,
    /// Lips or troughs are so low that the work climbs out.
    LipsLow,
    /// Lips are so thin that they spread.
    LipsThin,
    /// The work is loose between lips or stops.
    WorkLoose,
    /// A bow, a throat or a stop does not clear or reach what it is for.
    DoesNotReach,
    /// A lug meets its like before the faces hold.
    LugsMeet,
    /// The work shows the jaw no face that it bears on.
    WorkBearsBadly,
    /// The smaller opening lies where the squeeze is strongest.
    OpeningsSwapped,
    /// A sketched jaw turns back on itself.
    SketchTurnsBack,
    /// A sketched jaw has no steel somewhere.
    SketchWithoutSteel,

    /// The edges of a limb cross.
    LimbCrosses,
    /// A limb narrows between its ends.
    LimbNarrows,
    /// An inside corner is sharp.
    CornerSharp,
    /// An inside corner has less room than was asked.
    CornerOverRoom,
    /// The neck is thin.
    NeckThin,
    /// The neck is deeper than the bar.
    NeckOverBar,
    /// The back of the neck stands over boss and jaw.
    NeckHumped,
    /// A limb is deeper than the boss that it leaves.
    LimbOverBoss,
    /// The rein begins inside the sweep of the other boss.
    ReinStrikesBoss,
    /// A limb steps sideways steeply.
    LimbStepsSteeply,

    /// The hand lies past the rein's end.
    HandPastRein,
    /// The hand lies at the joint.
    HandAtJoint,
    /// The reins pinch the fingers.
    FingersPinched,
    /// The parallel end is longer than the rein.
    ParallelOverRein,
    /// The rein's inside would fold.
    ReinFolds,
    /// The rein bends tightly.
    ReinBendTight,
    /// The rein cannot reach the hand gap.
    HandGapMissed,
    /// The bend takes another length than was asked.
    BendLengthMissed,
    /// The rein cannot swell as was asked.
    BowMissed,
    /// The rein is thicker at its end than at the shoulder.
    ReinTapersBackwards,
    /// The grip of the hand runs past the rein's end or into the joint.
    HandZoneRunsOut,
    /// An edge is broken more than there is rein.
    EdgeOverRein,

    /// The halves overlap in every pose.
    CannotBeAssembled,
    /// The halves overlap where they stand on the work.
    HalvesOverlap,
    /// The pair hardly opens.
    OpensLittle,
    /// The pair cannot hold its own work.
    CannotHold,
    /// The pair holds its own work so that it can fly out.
    WorkCanFlyOut,
    /// The jaws are made for other work than the pair's own.
    WorkHeldBadly,
    /// The reins are wider than a hand closes with force.
    SpanWide,
    /// The reins are narrower than a hand has force.
    SpanNarrow,
    /// The jaws gape on their own work.
    JawsGape,
    /// Its own work is outside the range that the pair holds.
    WorkOutOfRange,
    /// The reins meet before the jaws do.
    ReinsMeetFirst,
    /// The hand has little leverage.
    LeverageSmall,
    /// The pair is heavy for one hand.
    Heavy,
    /// The reins are out of line with jaws and rivet.
    ReinsOutOfLine,

    /// Rein or shoulder bends for good.
    ReinBends,
    /// The boss bends across the hole.
    BossBends,
    /// Neck or jaw bends for good.
    NeckBends,
    /// The rivet shears.
    RivetShears,
    /// The rivet crushes its hole.
    HoleCrushes,
    /// The reins close far under an ordinary squeeze.
    ReinsWhippy,
    /// The reins are too soft for a clip.
    ClipSoft,
    /// The reins are too stiff for a clip.
    ClipStiff,

    /// A procedure does not suit the design.
    ProcedureUnsuited,
    /// An operation cannot be left out, or stand where it was moved to.
    OperationOutOfPlace,
    /// No cold steel is left that tongs could close on.
    NothingToHold,
    /// The bar is thinner than what an operation is to make of it.
    BarThinForOperation,
    /// A part of the jaw has more steel than the bar: its end is upset first.
    JawNeedsUpsetting,
    /// The jaw is wider than plain blows make it.
    JawNeedsPeening,
    /// A hole is to be punched in cold steel.
    PunchedCold,
    /// What is welded on is shorter than its scarfs.
    WeldUnderScarf,

    /// No heat source of the shop serves an operation.
    NoHeatServes,
    /// A thin part burns before the rest is hot.
    ThinPartBurns,
    /// A part stays too cold to be struck.
    PartStaysCold,
    /// The steel cannot be worked for long enough to be struck.
    HeatTooShort,

    /// A value comes out past its limits by its rule.
    RulePastLimits,
    /// What was set by hand cannot be read.
    SetByHandUnread,
    /// What was set by hand has no place in this size.
    SetByHandUnused,

    /// A tool's style and what it is held in do not go together.
    MountUnsuited,
    /// The parts of a tool are longer together than the tool.
    PartsOverLength,
    /// The steel does not suit the use of a tool.
    SteelUnsuited,
    /// How a tool's steel is hardened and tempered is for its maker to say.
    MakerSays,
    /// A tool that would lose its hardness in use, or break, is hardened.
    NeverHardened,
    /// A struck end has a sharp rim.
    StruckEndSharp,
    /// A struck end is hard.
    StruckEndHard,
    /// The hand is near the hot work.
    HandNearHeat,
    /// A punch does not reach through the work.
    PunchShort,
    /// A punch grows so fast that it sticks.
    PunchSticks,
    /// A punch buckles under the force that sinks it.
    PunchBuckles,
    /// A punch bends or mushrooms where it is hot.
    PunchBendsHot,
    /// A drift does not go far enough into the hole.
    DriftShort,
    /// A drift does not enter the punched hole.
    DriftDoesNotEnter,
    /// A drift does not drop through.
    DriftStays,
    /// A drift opens the hole so fast that it tears.
    DriftSteep,
    /// A drift is no larger than the hole that it enters.
    DriftOpensNothing,
    /// A punch is so stout that no usual blow sinks it.
    PunchWantsForce,
    /// An edge is too keen or too blunt for its use.
    EdgeAngle,
    /// An edge is narrower than what it cuts, or its blade is thin.
    BladeSlender,
    /// A cup does not fit a rivet's head.
    CupMisfit,
    /// A cup is shallower or deeper than a rivet's head asks for.
    CupDepth,
    /// The steel around a cup or a groove is thin.
    WallThin,
    /// An eye leaves thin cheeks.
    CheekThin,
    /// An eye is near an end of the tool.
    EyeNearEnd,
    /// No usual handle fits an eye.
    EyeHandle,
    /// A hardy shank does not drop into its hole.
    ShankTight,
    /// A hardy shank is loose in its hole.
    ShankLoose,
    /// A hardy shank wedges in its hole.
    ShankWedges,
    /// A hardy shank is short or long.
    ShankLength,
    /// A hardy tool stands on the corner of its shank.
    ShankOnCorner,
    /// The shoulder of a hardy tool bears on little.
    ShoulderSmall,
    /// A fork is slimmer than the work that it bends.
    ForkWeak,
    /// The tines of a fork bend at their root.
    ForkBends,
    /// The nose of a fuller is sharp.
    NoseSharp,
    /// A cut end flies, and an edge that is struck is spoilt.
    CutEndFlies,
}

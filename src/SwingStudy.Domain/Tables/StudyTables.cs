using SwingStudy.Domain.Variables;

namespace SwingStudy.Domain.Tables;

/// <summary>The tables of a study and their columns: the contract that analysts script against.</summary>
public static class StudyTables
{
    private const string ByParticipant = "participant";

    /// <summary>What devices recorded, as read, with origin and all variables a device can deliver.</summary>
    public static TableDefinition Captures(VariableDictionary dictionary) => new("captures", "one device record",
    [
        new("capture_id", ColumnKind.Text, "Capture"),
        new("source", ColumnKind.Text, "Source"),
        new("device", ColumnKind.Text, "Device"),
        new("participant", ColumnKind.Text, "Participant"),
        new("alias_hash", ColumnKind.Text, "Keyed hash of the name in the file"),
        new("session", ColumnKind.Text, "Session named in the file"),
        new("sequence", ColumnKind.Integer, "Number given by the device"),
        new("recorded_at", ColumnKind.Instant, "Time on the device's clock"),
        new("struck_at", ColumnKind.Instant, "Moment of impact on the device's clock"),
        new("is_practice", ColumnKind.Boolean, "Practice swing without a ball"),
        new("purpose", ColumnKind.Text, "What a recording is for: swing, zero (empty plates) or quiet (standing); missing for records without curves"),
        new("original_sha256", ColumnKind.Text, "Original"),
        new("original_row", ColumnKind.Integer, "Row in the original"),
        new("revision_of", ColumnKind.Text, "Capture that this one replaces"),
        .. VariablesExcept(dictionary, []),
    ], ByParticipant);

    /// <summary>Curves of captures.</summary>
    public static TableDefinition Curves { get; } = new("curves", "one channel of a capture over time",
    [
        new("capture_id", ColumnKind.Text, "Capture"),
        new("participant", ColumnKind.Text, "Participant"),
        new("channel", ColumnKind.Text, "Channel"),
        new("unit", ColumnKind.Text, "UCUM unit of the values"),
        new("sample_rate_hz", ColumnKind.Number, "Samples a second", "Hz"),
        new("t0_s", ColumnKind.Number, "Time of the first sample relative to impact", "s"),
        new("values", ColumnKind.NumberList, "Samples"),
    ], ByParticipant);

    /// <summary>Events that a device marked in its own recording.</summary>
    public static TableDefinition CaptureEvents { get; } = new("capture_events", "one event that a device marked in a recording",
    [
        new("capture_id", ColumnKind.Text, "Capture"),
        new("participant", ColumnKind.Text, "Participant"),
        new("event", ColumnKind.Text, "Event, as the mapping names it"),
        new("label", ColumnKind.Text, "Event, as the file names it"),
        new("time_s", ColumnKind.Number, "Time from the first sample", "s"),
    ], ByParticipant);

    /// <summary>Files, rows and cells that could not be taken, with their raw text.</summary>
    public static TableDefinition Rejects { get; } = new("rejects", "one file, row or cell that could not be taken",
    [
        new("original_sha256", ColumnKind.Text, "Original"),
        new("original_row", ColumnKind.Integer, "Row in the original"),
        new("raw", ColumnKind.Text, "Raw text"),
        new("reason", ColumnKind.Text, "Reason, a stable word"),
        new("detail", ColumnKind.Text, "What was expected"),
        new("extent", ColumnKind.Text, "file, row or cell"),
        new("column", ColumnKind.Text, "Heading of the cell"),
        new("variable", ColumnKind.Text, "Variable of the cell"),
        new("capture_id", ColumnKind.Text, "Capture that was taken without the cell"),
    ], null);

    /// <summary>Which captures belong to which swing, and how that was found.</summary>
    public static TableDefinition Links { get; } = new("links", "one capture's place in a swing",
    [
        new("capture_id", ColumnKind.Text, "Capture"),
        new("swing_id", ColumnKind.Text, "Swing; missing when no swing was found"),
        new("participant", ColumnKind.Text, "Participant"),
        new("method", ColumnKind.Text, "How it was linked, or why not"),
        new("residual_s", ColumnKind.Number, "Time left between devices after the clock model; positive: this device was late", "s"),
        new("confidence", ColumnKind.Number, "Confidence of the link, 0 to 1", "1"),
        new("session", ColumnKind.Text, "Session"),
        new("struck_at", ColumnKind.Instant, "Moment of impact of the swing, on the clock of the device that gives the session its swings"),
        new("candidate", ColumnKind.Text, "Where no link was made: the capture that it would join, if any"),
        new("source", ColumnKind.Text, "Source of the capture"),
        new("device", ColumnKind.Text, "Device of the capture; its source where no device is named"),
    ], ByParticipant);

    /// <summary>Clocks of devices against the clock of the session's reference device: t_reference = t_device + offset + drift * (t_device - from).</summary>
    public static TableDefinition Clocks { get; } = new("clocks", "one stretch of one device's clock in one session",
    [
        new("participant", ColumnKind.Text, "Participant"),
        new("session", ColumnKind.Text, "Session"),
        new("source", ColumnKind.Text, "Source"),
        new("device", ColumnKind.Text, "Device"),
        new("reference_source", ColumnKind.Text, "Source whose clock is the reference"),
        new("from", ColumnKind.Instant, "First record of the stretch, on the device's clock"),
        new("to", ColumnKind.Instant, "Last record of the stretch, on the device's clock"),
        new("offset_s", ColumnKind.Number, "To add to the device's time at the first record", "s"),
        new("drift_ppm", ColumnKind.Number, "Change of the offset in millionths of elapsed time", "1"),
        new("residual_rms_s", ColumnKind.Number, "Root mean square of what the model leaves", "s"),
        new("matched", ColumnKind.Integer, "Records joined to a swing"),
        new("missed", ColumnKind.Integer, "Swings of the stretch without a record"),
        new("extra", ColumnKind.Integer, "Records of the stretch without a swing"),
        new("confidence", ColumnKind.Number, "Confidence of the model, 0 to 1", "1"),
        new("method", ColumnKind.Text, "How the clock was modelled: reference, offset, offset-and-drift; or not-made"),
        new("rival_s", ColumnKind.Number, "Distance of the next best offset from this one", "s"),
        new("rival_matched", ColumnKind.Integer, "Records that the next best offset would join"),
    ], ByParticipant);

    /// <summary>Swings with their conditions and all variables.</summary>
    public static TableDefinition Swings(VariableDictionary dictionary) => new("swings", "one swing",
    [
        new("swing_id", ColumnKind.Text, "Swing"),
        new("participant", ColumnKind.Text, "Participant"),
        new("session", ColumnKind.Text, "Session"),
        new("phase", ColumnKind.Text, "Phase"),
        new("sequence", ColumnKind.Integer, "Order within the session"),
        new("struck_at", ColumnKind.Instant, "Moment of impact"),
        new("club", ColumnKind.Text, "Club"),
        new("ball", ColumnKind.Text, "Ball"),
        new("surface", ColumnKind.Text, "Surface"),
        new("is_practice", ColumnKind.Boolean, "Practice swing without a ball"),
        new("included", ColumnKind.Boolean, "Counts in the analysis"),
        .. VariablesExcept(dictionary, ["club", "ball", "surface"]),
    ], ByParticipant);

    /// <summary>Values of swings before screening: swings without the decision whether they count.</summary>
    public static TableDefinition Measures(VariableDictionary dictionary) =>
        new("measures", "the values of one swing before screening", [.. Swings(dictionary).Columns.Where(column => column.Name != "included")], ByParticipant);

    /// <summary>Events within swings.</summary>
    public static TableDefinition SwingEvents { get; } = new("swing_events", "one event in a swing",
    [
        new("swing_id", ColumnKind.Text, "Swing"),
        new("participant", ColumnKind.Text, "Participant"),
        new("event", ColumnKind.Text, "Event"),
        new("time_s", ColumnKind.Number, "Time relative to impact", "s"),
        new("method", ColumnKind.Text, "Rule that found it"),
        new("confidence", ColumnKind.Number, "Confidence, 0 to 1", "1"),
    ], ByParticipant);

    /// <summary>What was computed from the curves of swings, and what could not be, with the reason.</summary>
    public static TableDefinition CurveMeasures { get; } = new("curve_measures", "one variable computed from the curves of one swing",
    [
        new("swing_id", ColumnKind.Text, "Swing"),
        new("participant", ColumnKind.Text, "Participant"),
        new("variable", ColumnKind.Text, "Variable"),
        new("source", ColumnKind.Text, "Source whose curves it comes from"),
        new("value", ColumnKind.Number, "Value in the dictionary's unit; missing where it could not be computed"),
        new("text", ColumnKind.Text, "Value of a variable that is a word"),
        new("unit", ColumnKind.Text, "UCUM unit of the value"),
        new("method", ColumnKind.Text, "Definition, filter and events it rests on"),
        new("reason", ColumnKind.Text, "Why it could not be computed"),
    ], ByParticipant);

    /// <summary>Processed curves of swings on one time axis, from which measures, curve tests and figures are made.</summary>
    public static TableDefinition SwingCurves { get; } = new("swing_curves", "one processed curve of one swing",
    [
        new("swing_id", ColumnKind.Text, "Swing"),
        new("participant", ColumnKind.Text, "Participant"),
        new("channel", ColumnKind.Text, "Channel"),
        new("unit", ColumnKind.Text, "UCUM unit of the values"),
        new("sample_rate_hz", ColumnKind.Number, "Samples a second", "Hz"),
        new("t0_s", ColumnKind.Number, "Time of the first sample relative to impact", "s"),
        new("values", ColumnKind.NumberList, "Samples"),
        new("method", ColumnKind.Text, "How it was processed: filter, cut-off, zero"),
    ], ByParticipant);

    /// <summary>Findings of screening.</summary>
    public static TableDefinition Flags { get; } = new("flags", "one finding of screening about a value or swing",
    [
        new("swing_id", ColumnKind.Text, "Swing"),
        new("capture_id", ColumnKind.Text, "Capture"),
        new("participant", ColumnKind.Text, "Participant"),
        new("variable", ColumnKind.Text, "Variable"),
        new("rule", ColumnKind.Text, "Rule"),
        new("action", ColumnKind.Text, "keep, exclude-value or exclude-swing"),
        new("detail", ColumnKind.Text, "What was found, with the value"),
        new("decided_by", ColumnKind.Text, "rule, or the person who decided"),
    ], ByParticipant);

    /// <summary>Each player's noise: what the pooled variances of the study are summed from.</summary>
    public static TableDefinition Noise { get; } = new("noise", "the scatter of one outcome of one player within phases",
    [
        new("participant", ColumnKind.Text, "Participant"),
        new("outcome", ColumnKind.Text, "Outcome"),
        new("swings", ColumnKind.Integer, "Swings that count"),
        new("sessions", ColumnKind.Integer, "Sessions"),
        new("phases", ColumnKind.Integer, "Phases"),
        new("session_ss", ColumnKind.Number, "Sum of squares of sessions within phases"),
        new("swing_ss", ColumnKind.Number, "Sum of squares of swings within sessions"),
        new("square_counts", ColumnKind.Number, "Sum over phases of the squared swings of each session over the swings of the phase"),
    ], ByParticipant);

    /// <summary>Effects per player and contrast.</summary>
    public static TableDefinition Effects { get; } = new("effects", "one estimate for one player",
    [
        new("participant", ColumnKind.Text, "Participant"),
        new("outcome", ColumnKind.Text, "Outcome"),
        new("contrast", ColumnKind.Text, "Contrast"),
        new("measure", ColumnKind.Text, "Effect measure"),
        .. EstimateColumns,
        new("n_from", ColumnKind.Integer, "Swings before"),
        new("n_to", ColumnKind.Integer, "Swings after"),
        new("sessions_from", ColumnKind.Integer, "Sessions before"),
        new("sessions_to", ColumnKind.Integer, "Sessions after"),
        new("unit", ColumnKind.Text, "UCUM unit of the estimate"),
        new("method", ColumnKind.Text, "Method"),
        new("planned", ColumnKind.Boolean, "Named in the protocol"),
        new("undefined", ColumnKind.Text, "Why there is no estimate"),
    ], ByParticipant);

    /// <summary>Reliability of outcomes.</summary>
    public static TableDefinition Reliability { get; } = new("reliability", "one coefficient",
    [
        new("outcome", ColumnKind.Text, "Outcome"),
        new("level", ColumnKind.Text, "What is compared: swing, session mean"),
        new("coefficient", ColumnKind.Text, "Coefficient"),
        new("estimate", ColumnKind.Number, "Estimate"),
        new("ci_low", ColumnKind.Number, "Lower limit"),
        new("ci_high", ColumnKind.Number, "Upper limit"),
        new("n", ColumnKind.Integer, "Players"),
        new("k", ColumnKind.Integer, "Measurements a player"),
        new("df", ColumnKind.Number, "Degrees of freedom"),
        new("unit", ColumnKind.Text, "UCUM unit of the estimate"),
        new("method", ColumnKind.Text, "Method"),
        new("undefined", ColumnKind.Text, "Why there is no estimate"),
    ], null);

    /// <summary>Agreement of two sources that deliver the same variable.</summary>
    public static TableDefinition Agreement { get; } = new("agreement", "two sources of one variable",
    [
        new("outcome", ColumnKind.Text, "Variable"),
        new("source_a", ColumnKind.Text, "First source"),
        new("source_b", ColumnKind.Text, "Second source"),
        new("n", ColumnKind.Integer, "Swings with both"),
        new("bias", ColumnKind.Number, "Mean of a minus b"),
        new("bias_ci_low", ColumnKind.Number, "Lower limit of the bias"),
        new("bias_ci_high", ColumnKind.Number, "Upper limit of the bias"),
        new("loa_low", ColumnKind.Number, "Lower limit of agreement"),
        new("loa_low_ci_low", ColumnKind.Number, "Its lower limit"),
        new("loa_low_ci_high", ColumnKind.Number, "Its upper limit"),
        new("loa_high", ColumnKind.Number, "Upper limit of agreement"),
        new("loa_high_ci_low", ColumnKind.Number, "Its lower limit"),
        new("loa_high_ci_high", ColumnKind.Number, "Its upper limit"),
        new("unit", ColumnKind.Text, "UCUM unit"),
        new("method", ColumnKind.Text, "Method"),
    ], null);

    /// <summary>Terms of single-case time series of players.</summary>
    public static TableDefinition Trends { get; } = new("trends", "one term of one player's series of sessions or swings",
    [
        new("participant", ColumnKind.Text, "Participant"),
        new("outcome", ColumnKind.Text, "Outcome"),
        new("contrast", ColumnKind.Text, "Contrast"),
        new("term", ColumnKind.Text, "Term"),
        .. EstimateColumns,
        new("unit", ColumnKind.Text, "UCUM unit of the estimate"),
        new("method", ColumnKind.Text, "Method"),
        new("undefined", ColumnKind.Text, "Why there is no estimate"),
    ], ByParticipant);

    /// <summary>Mean curves of players with their bands, phase by phase.</summary>
    public static TableDefinition CurveMeans { get; } = new("curve_means", "the mean curve of one channel of one player in one phase",
    [
        new("participant", ColumnKind.Text, "Participant"),
        new("channel", ColumnKind.Text, "Channel"),
        new("phase", ColumnKind.Text, "Phase"),
        new("axis", ColumnKind.Text, "swing-phases (0 start of the swing, 100 top, 200 impact) or ms-from-impact"),
        new("first", ColumnKind.Number, "Place of the first point on the axis"),
        new("step", ColumnKind.Number, "Distance from point to point on the axis"),
        new("unit", ColumnKind.Text, "UCUM unit of the curves"),
        new("over", ColumnKind.Text, "What the bands are over: sessions, or swings (then they hold for these sessions only)"),
        new("swings", ColumnKind.Integer, "Swings with a curve that counts"),
        new("sessions", ColumnKind.Integer, "Sessions of these swings"),
        new("lost", ColumnKind.Integer, "Counted swings whose curve has gaps or does not reach over the axis"),
        new("level", ColumnKind.Number, "Level of the bands, a share", "1"),
        new("mean", ColumnKind.NumberList, "Mean at each point: of session means where the bands are over sessions, else of swings"),
        new("swing_sd", ColumnKind.NumberList, "Standard deviation from swing to swing within sessions"),
        new("pointwise_low", ColumnKind.NumberList, "Lower limit at each point by itself"),
        new("pointwise_high", ColumnKind.NumberList, "Upper limit at each point by itself"),
        new("simultaneous_low", ColumnKind.NumberList, "Lower limit over all points together"),
        new("simultaneous_high", ColumnKind.NumberList, "Upper limit over all points together"),
        new("method", ColumnKind.Text, "Method"),
        new("undefined", ColumnKind.Text, "What there is not, and why"),
    ], ByParticipant);

    /// <summary>Curve tests of players: the whole curve, and spans in which two phases differ.</summary>
    public static TableDefinition CurveTests { get; } = new("curve_tests", "two phases compared over a whole curve, or over one span of it",
    [
        new("participant", ColumnKind.Text, "Participant"),
        new("channel", ColumnKind.Text, "Channel"),
        new("contrast", ColumnKind.Text, "Contrast"),
        new("measure", ColumnKind.Text, "largest-t (whole curve), span-t (span beyond the threshold) or span-mass (run of neighbouring points, judged by its mass)"),
        new("from_pct", ColumnKind.Number, "Start of the span: 0 start of the swing, 100 top, 200 impact", "%"),
        new("to_pct", ColumnKind.Number, "End of the span", "%"),
        new("from_ms", ColumnKind.Number, "Start of the span relative to impact, where events are lacking", "ms"),
        new("to_ms", ColumnKind.Number, "End of the span", "ms"),
        new("statistic", ColumnKind.Number, "Largest |t|; for span-mass the size of the sum of t", "1"),
        new("direction", ColumnKind.Text, "Whether curves are higher or lower there after than before"),
        new("p", ColumnKind.Number, "p value over the whole curve", "1"),
        new("threshold", ColumnKind.Number, "|t| that chance alone exceeds anywhere with the stated probability; for span-mass the |t| that forms runs", "1"),
        new("permuted", ColumnKind.Text, "What was exchanged between phases: sessions, or swings (which leaves out the scatter between sessions and proves no change)"),
        new("compared", ColumnKind.Integer, "Relabellings compared, the observed one included"),
        new("n_from", ColumnKind.Integer, "Swings before"),
        new("n_to", ColumnKind.Integer, "Swings after"),
        new("sessions_from", ColumnKind.Integer, "Sessions before"),
        new("sessions_to", ColumnKind.Integer, "Sessions after"),
        new("method", ColumnKind.Text, "Method"),
        new("undefined", ColumnKind.Text, "Why there is no test"),
    ], ByParticipant);

    /// <summary>Study-level estimates over players.</summary>
    public static TableDefinition GroupEffects { get; } = new("group_effects", "one estimate for the study",
    [
        new("outcome", ColumnKind.Text, "Outcome"),
        new("contrast", ColumnKind.Text, "Contrast"),
        new("measure", ColumnKind.Text, "Effect measure"),
        .. EstimateColumns,
        new("p_adjusted", ColumnKind.Number, "p value adjusted for the planned tests", "1"),
        new("tau2", ColumnKind.Number, "Variance of true effects between players"),
        new("i2", ColumnKind.Number, "Share of the variation that is between players", "%"),
        new("pi_low", ColumnKind.Number, "Lower limit for a new player's true effect"),
        new("pi_high", ColumnKind.Number, "Upper limit for a new player's true effect"),
        new("n", ColumnKind.Integer, "Players"),
        new("unit", ColumnKind.Text, "UCUM unit of the estimate"),
        new("method", ColumnKind.Text, "Method"),
        new("planned", ColumnKind.Boolean, "Named in the protocol"),
        new("undefined", ColumnKind.Text, "Why there is no estimate"),
    ], null);

    /// <summary>Statements about players and the study.</summary>
    public static TableDefinition Findings { get; } = new("findings", "one statement",
    [
        new("scope", ColumnKind.Text, "player or study"),
        new("participant", ColumnKind.Text, "Participant"),
        new("outcome", ColumnKind.Text, "Outcome"),
        new("contrast", ColumnKind.Text, "Contrast"),
        new("basis", ColumnKind.Text, "planned, amended (added after the lock) or exploratory (not in the protocol)"),
        new("verdict", ColumnKind.Text, "supported, suggestive, not shown or cannot tell"),
        new("statement", ColumnKind.Text, "The statement"),
        new("reasons", ColumnKind.Text, "Its reasons, one a line: a stable word, a colon, a sentence"),
    ], null);

    /// <summary>All tables, in the order in which the stages write them.</summary>
    public static IReadOnlyList<TableDefinition> All(VariableDictionary dictionary) =>
        [
            Captures(dictionary), Curves, CaptureEvents, Rejects, Links, Clocks, Measures(dictionary), SwingEvents, SwingCurves, CurveMeasures, Flags, Swings(dictionary),
            Noise, Effects, Reliability, Agreement, Trends, CurveMeans, CurveTests, GroupEffects, Findings,
        ];

    private static ColumnDefinition[] EstimateColumns =>
    [
        new("estimate", ColumnKind.Number, "Estimate"),
        new("se", ColumnKind.Number, "Standard error"),
        new("ci_low", ColumnKind.Number, "Lower limit"),
        new("ci_high", ColumnKind.Number, "Upper limit"),
        new("p", ColumnKind.Number, "p value", "1"),
    ];

    private static IEnumerable<ColumnDefinition> VariablesExcept(VariableDictionary dictionary, string[] named) =>
        dictionary.Variables.Where(variable => variable.Level != VariableLevel.Participant && !named.Contains(variable.Name))
            .Select(variable => variable.Column);
}

namespace SwingStudy.Domain.Protocols;

/// <summary>A kind of screening rule that protocols may name.</summary>
/// <param name="Name">The word in protocols and in the <c>rule</c> column.</param>
/// <param name="Meaning">What it finds.</param>
/// <param name="NeedsVariables">Whether a protocol has to say which variables it looks at.</param>
/// <param name="Settings">Its limits.</param>
public sealed record ScreeningRuleKind(string Name, string Meaning, bool NeedsVariables, IReadOnlyList<ScreeningSetting> Settings)
{
    /// <summary>Every kind, in the order in which rules are best applied.</summary>
    public static IReadOnlyList<ScreeningRuleKind> All { get; } =
    [
        new("impossible", "a value outside the possible range of the dictionary", false, []),
        new("unit-jump", "a session whose middle value differs from the player's others by a known unit factor", true,
        [
            new("tolerance", 0.02, 0, 0.2, "share by which the ratio may miss the factor"),
            new("minimum_swings", 3, 1, 1000, "swings a session needs to be judged"),
        ]),
        new("ratio-limit", "a speed ratio that no strike can reach, so that one of the two speeds is misread", false,
        [
            new("maximum", 1.56, 0.1, 2, "highest believable ball speed over club head speed"),
            new("minimum", 0.8, 0, 2, "lowest believable ratio of a full swing"),
        ]),
        new("repeated-value", "the same value swing after swing, as a frozen channel gives", true,
        [
            new("run", 4, 2, 1000, "equal values in a row"),
        ]),
        new("outside-typical", "a value outside the typical range of the dictionary", false, []),
        new("robust-outlier", "a value far from the middle of the player's session and club", true,
        [
            new("limit", 3.5, 1, 20, "modified z-score: 0.6745 times the distance from the median over the median absolute deviation"),
            new("minimum_swings", 8, 3, 1000, "swings a session needs to be judged"),
        ]),
        new("device-disagreement", "a club head speed that the sensor and the marks give differently, beyond what they usually differ by in the session", false,
        [
            new("tolerance", 0.05, 0.005, 0.5, "share by which the ratio of both may miss its middle"),
            new("minimum_swings", 5, 3, 1000, "swings with both that a session needs to be judged"),
        ]),
        new("weight-drift", "a session whose body weight on the plates differs from the player's others: plate, zero or footwear", false,
        [
            new("tolerance", 0.02, 0.001, 0.5, "share by which it may differ"),
        ]),
        new("plates-swapped", "a session in which the lead foot's share grows in most backswings, as if lead and trail plate were exchanged", false,
        [
            new("minimum_swings", 3, 2, 1000, "swings that a session needs to be judged"),
        ]),
    ];

    /// <summary>The kind of that name, or null.</summary>
    public static ScreeningRuleKind? Find(string name) => All.FirstOrDefault(kind => kind.Name == name);

    /// <summary>The value of a setting in a rule of this kind: as the protocol says, else the default.</summary>
    /// <exception cref="ArgumentException">This kind has no such setting.</exception>
    public double Value(ScreeningRule rule, string setting) =>
        rule.Settings.TryGetValue(setting, out var value)
            ? value
            : Settings.FirstOrDefault(candidate => candidate.Name == setting)?.Default
              ?? throw new ArgumentException($"The rule '{Name}' has no setting '{setting}'.", nameof(setting));
}

namespace SwingStudy.Reporting.Documents;

/// <summary>What the words of the <c>measure</c>, <c>method</c> and <c>coefficient</c> columns mean, in one sentence for readers of a report.</summary>
internal static class MethodWords
{
    private static readonly Dictionary<string, string> Meanings = new(StringComparer.Ordinal)
    {
        ["difference"] = "Mean of session means after minus before, in the unit of the outcome.",
        ["percent-change"] = "The difference as a share of the mean before.",
        ["log-response-ratio"] = "Natural logarithm of the mean after over the mean before.",
        ["hedges-g"] = "The difference in standard deviations, corrected for small samples.",
        ["honest-change"] = "The player's change judged against that player's own noise from swing to swing and from day to day; a session counts as one point, however many swings it holds.",
        ["icc-2-1"] = "Share of the scatter between measurements that lies between players: intraclass correlation, two-way random, single measurement, agreement (Shrout and Fleiss 1979).",
        ["sem"] = "Standard error of measurement: scatter of repeated measurements of the same person.",
        ["session-sd"] = "How far a player's session means scatter from day to day, swing noise taken out (standard deviation).",
        ["swing-sd"] = "How far swings of one session scatter (standard deviation).",
        ["nested-anova-within-phases"] = "Variance components of swings in sessions, within phases, pooled over players.",
        ["smallest-detectable-change"] = "The change that must be exceeded before it can be told from the player's own noise.",
        ["share-kept"] = "Share of the change with the cue that is still there, or carries over, in percent.",
        ["share-kept-fieller"] = "Share of a change with Fieller's interval, which exists only where the change itself is clear.",
        ["meta-reml-knapp-hartung"] = "Mean over players that lets true changes differ between them (random effects, restricted maximum likelihood; error after Knapp and Hartung).",
        ["meta-tau-reml"] = "Standard deviation of true changes between players, the error of each player's estimate taken out.",
        ["count of players with the verdict 'supported'"] = "How many players have a supported change.",
        ["percent-change-independent"] = "Change of the mean of session means in percent.",
        ["hedges-g-pooled"] = "Standardized by the pooled scatter of both phases (Hedges and Olkin 1985).",
        ["hedges-g-pooled-bootstrap-bca"] = "Standardized by the pooled scatter of both phases, interval by the bias-corrected and accelerated bootstrap.",
        ["glass-delta-corrected"] = "Standardized by the scatter of the baseline alone, corrected for small samples.",
        ["mean-difference-welch"] = "Difference of means that lets the scatter differ between phases.",
        ["nap"] = "Share of pairs of a value before and a value after in which the later one is better (non-overlap of all pairs).",
        ["tau-ab"] = "Improving pairs minus worsening pairs, as a share of all pairs of before and after.",
        ["theil-sen-slope"] = "Median of the slopes between all pairs of points: a trend that single points cannot bend.",
        ["randomization-multiple-baseline"] = "p value: how often the starts that might have been drawn instead give a change as large (Edgington and Onghena 2007), sampled.",
        ["randomization-multiple-baseline-exact"] = "p value: how often the starts that might have been drawn instead give a change as large (Edgington and Onghena 2007), all of them.",
        ["randomization"] = "p value over a sample of the assignments that might have been drawn.",
        ["randomization-exact"] = "p value over all assignments that might have been drawn.",
        ["curve-mean-band"] = "Mean curve with limits at each point and limits over all points together, the latter from resampled curves (Degras 2011; Lenhoff et al. 1999).",
        ["curve-t-two-sample-max-permutation"] = "Two phases at every point of the curve, held to the largest difference that relabelling gives anywhere (Nichols and Holmes 2002).",
        ["curve-t-two-sample-cluster-mass"] = "Runs of neighbouring points that differ, judged by how heavy a run relabelling gives anywhere (Maris and Oostenveld 2007).",
        ["sem-agreement"] = "Standard error of measurement: scatter of repeated measurements of the same person.",
        ["typical-error"] = "Scatter of repeated measurements of the same person, from differences between them.",
    };

    /// <summary>What people call a measure of effect.</summary>
    public static string TitleOf(string measure) => measure switch
    {
        "hedges-g" => "Hedges' g",
        "glass-delta" => "Glass's Δ",
        _ => measure.Replace('-', ' '),
    };

    /// <summary>The meaning, or null when this report has no sentence for the word. What a method adds after a semicolon is plain English already.</summary>
    public static string? MeaningOf(string word) => Meanings.GetValueOrDefault(word.Split(';')[0]);
}

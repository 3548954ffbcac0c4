using SwingStudy.Domain.Tables;

namespace SwingStudy.Pipeline.Masking;

/// <summary>Which columns tell a phase or the direction of a contrast.</summary>
/// <remarks>
/// A table of contrasts shows what is listed here and nothing else, so that a new column is withheld until somebody has thought about it. In all other
/// tables phase and cue are shown as codes, and free texts and ratings of the cue are withheld.
/// </remarks>
internal static class MaskedColumns
{
    /// <summary>Measures whose sign is the direction and whose size is the same in both: to swap the phases changes the sign alone.</summary>
    public static IReadOnlyList<string> Symmetric { get; } = ["difference", "hedges-g", "log-response-ratio"];

    private static readonly HashSet<string> OfContrasts = new(StringComparer.Ordinal)
    {
        "participant", "scope", "outcome", "channel", "measure", "term", "verdict", "se", "p", "p_adjusted", "tau2", "i2", "unit", "method", "planned", "statistic", "threshold",
        "from_pct", "to_pct", "from_ms", "to_ms", "permuted", "compared", "n",
    };

    private static readonly HashSet<string> Telling = new(StringComparer.Ordinal)
    {
        "cue_adherence", "cue_adherence_observer", "feedback_given", "note", "remark", "variables", "raw",
    };

    /// <summary>The rule of a column.</summary>
    public static MaskRule Of(TableDefinition table, string column)
    {
        var isOfContrasts = table.Columns.Any(other => other.Name == "contrast");
        return column switch
        {
            "phase" => MaskRule.PhaseCode,
            "contrast" => MaskRule.ContrastCode,
            "cue" => MaskRule.CueCode,
            "estimate" when isOfContrasts => Sized(table, MaskRule.Size),
            "ci_low" when isOfContrasts => Sized(table, MaskRule.LowOfSize),
            "ci_high" when isOfContrasts => Sized(table, MaskRule.HighOfSize),
            "undefined" when table.Columns.Any(other => other.Name == "phase") => MaskRule.Withheld,
            "detail" when table.Name == StudyTables.Rejects.Name => MaskRule.Withheld,
            _ when isOfContrasts => OfContrasts.Contains(column) ? MaskRule.Plain : MaskRule.Withheld,
            _ => Telling.Contains(column) ? MaskRule.Withheld : MaskRule.Plain,
        };
    }

    private static MaskRule Sized(TableDefinition table, MaskRule rule) =>
        table.Columns.Any(column => column.Name == "measure") ? rule : MaskRule.Withheld;
}

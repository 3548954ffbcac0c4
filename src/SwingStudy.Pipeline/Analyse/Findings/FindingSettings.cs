using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Sources;
using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;
using SwingStudy.Domain.Variables;
using SwingStudy.Pipeline.Analyse.Randomization;

namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>What the findings stage may know of the declarations.</summary>
/// <param name="Outcomes">Outcomes in the protocol's order.</param>
/// <param name="Contrasts">Contrasts in the protocol's order.</param>
/// <param name="Phases">Phases in their order.</param>
/// <param name="Conditions">Text variables of swings that must stay the same over compared phases: those of the protocol, and club, ball and surface always.</param>
/// <param name="Sources">Sources that record swings, preferred ones first.</param>
/// <param name="Zone">Zone in which days are told.</param>
/// <param name="HasBodyWeight">Whether the dictionary knows body weight, by which force plates are checked.</param>
/// <param name="Confidence">Confidence level as a share.</param>
/// <param name="Multiplicity">Adjustment for several planned comparisons.</param>
/// <param name="Standard">Edition of design standards that the study is held to.</param>
/// <param name="Design">The design.</param>
/// <param name="IsRandomized">Whether the protocol lets chance decide when or in which order the cue comes.</param>
/// <param name="Draws">Draws of chance.</param>
/// <param name="Resamples">Sample of assignments where there are too many.</param>
/// <param name="Seed">Seed of that sample.</param>
/// <param name="IsLocked">Whether the protocol was locked, so that what was planned can be shown.</param>
/// <param name="IsBlinded">Whether the protocol says who is blind to what.</param>
internal sealed record FindingSettings(
    IReadOnlyList<OutcomeSetting> Outcomes,
    IReadOnlyList<ContrastSetting> Contrasts,
    IReadOnlyList<PhaseSetting> Phases,
    IReadOnlyList<string> Conditions,
    IReadOnlyList<string> Sources,
    string Zone,
    bool HasBodyWeight,
    double Confidence,
    string Multiplicity,
    DesignStandard Standard,
    DesignKind Design,
    bool IsRandomized,
    IReadOnlyList<DrawSetting> Draws,
    int Resamples,
    ulong Seed,
    bool IsLocked,
    bool IsBlinded)
{
    /// <summary>Variable by which force plates are checked.</summary>
    public const string BodyWeight = "body_weight";

    private static readonly string[] AlwaysWatched = ["club", "ball", "surface"];

    public static FindingSettings Of(StudySetup setup)
    {
        var texts = StudyTables.Swings(setup.Dictionary).Columns.Where(column => column.Kind == ColumnKind.Text).Select(column => column.Name).ToHashSet(StringComparer.Ordinal);
        return new FindingSettings(
            OutcomeSetting.Of(setup),
            ContrastSetting.Of(setup),
            PhaseSetting.Of(setup),
            [.. setup.Protocol.FixedConditions.Concat(AlwaysWatched).Where(texts.Contains).Distinct(StringComparer.Ordinal)],
            SourcesOf(setup),
            setup.Declaration.Zone,
            setup.Dictionary.TryGet(BodyWeight, out var weight) && weight.Type == VariableType.Number && weight.Level != VariableLevel.Participant,
            setup.Protocol.Analysis.Confidence,
            setup.Protocol.Analysis.Multiplicity,
            setup.Protocol.Standard,
            setup.Protocol.Design,
            setup.Protocol.Randomization is not null,
            DrawSetting.Of(setup),
            setup.Protocol.Analysis.Resamples,
            setup.Protocol.Analysis.Seed,
            setup.History.IsLocked,
            setup.Protocol.Blinding is not null);
    }

    private static IReadOnlyList<string> SourcesOf(StudySetup setup)
    {
        List<string> names = [.. setup.Mappings.Where(mapping => mapping.Rows is not (RowMeaning.Moments or RowMeaning.Sessions)).Select(mapping => mapping.Source).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        return [.. setup.Declaration.PreferredSources.Where(names.Contains).Concat(names).Distinct(StringComparer.Ordinal)];
    }

    /// <summary>The draw that a player belongs to; null for whom nothing was drawn.</summary>
    public DrawSetting? DrawOf(string participant) => Draws.FirstOrDefault(draw => draw.Players.Any(player => player.Participant == participant));

    /// <summary>The phase of that name.</summary>
    public PhaseSetting Phase(string name) => Phases.First(phase => phase.Name == name);

    /// <summary>Numeric columns of <c>swings</c> that findings read.</summary>
    public IEnumerable<string> NumericColumns => OutcomeSetting.Columns(Outcomes).Concat(HasBodyWeight ? [BodyWeight] : Array.Empty<string>()).Distinct(StringComparer.Ordinal);
}

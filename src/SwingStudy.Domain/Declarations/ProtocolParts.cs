using System.Globalization;
using SwingStudy.Domain.Declarations.Yaml;
using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Units;
using SwingStudy.Domain.Variables;

namespace SwingStudy.Domain.Declarations;

/// <summary>Reads the parts of a protocol.</summary>
internal sealed class ProtocolParts(YamlMap root, VariableDictionary dictionary)
{
    private const string Reason = "the reason, in a sentence";

    private static readonly string[] Measures = ["difference", "percent-change", "hedges-g", "log-response-ratio"];
    private static readonly string[] Adjustments = ["holm", "hochberg", "benjamini-hochberg", "none"];
    private static readonly string[] Standardizers = ["pooled", "baseline"];
    private static readonly string[] WorthwhileBases = ["stated", "share-of-between-player-sd", "share-of-own-sd"];

    public IReadOnlyList<Phase> Phases() => [.. root.Maps("phases", "phase", "name").Select(map =>
    {
        var phase = new Phase(
            Names.Kebab(map, "name", "baseline"),
            map.Choice<PhaseRole>("role", "what the phase is for"),
            map.Count("minimum_sessions", 1, "sessions a player needs in it"),
            map.Count("minimum_swings", 1, "counted swings a session needs"),
            map.OptionalCount("days_after", 0),
            map.OptionalText("cue"),
            map.Text("why", Reason)) { Line = map.LineOf("name") };
        map.Done();
        return phase;
    })];

    public Randomization? Randomization()
    {
        if (root.OptionalMap("randomization", "'randomization'") is not { } map)
            return null;
        var randomization = new Randomization(
            map.WordOf("kind", Protocols.Randomization.Kinds),
            map.OptionalCount("earliest_session", 1),
            map.OptionalCount("latest_session", 1),
            map.Seed("seed", "a whole number, drawn before data"))
        {
            Stagger = map.OptionalCount("stagger", 0),
            Sessions = map.OptionalCount("sessions", 2),
            LongestRun = map.OptionalCount("longest_run", 1),
            Why = map.Text("why", Reason),
            Line = map.LineOf("kind"),
        };
        map.Done();
        return randomization;
    }

    public Eligibility Eligibility()
    {
        if (root.Map("eligibility", "'eligibility'", "who may take part") is not { } map)
            return new(null, false, 18, []);
        var eligibility = new Eligibility(
            map.OptionalCount("minimum_age", 0),
            map.OptionalFlag("minors_allowed") ?? false,
            map.Count("age_of_majority", 1, "the age of majority by local law"),
            map.Texts("criteria")) { Requires = Requires(map), Why = map.Text("why", Reason) };
        map.Done();
        return eligibility;
    }

    private Dictionary<string, IReadOnlyList<string>> Requires(YamlMap eligibility)
    {
        var requires = new Dictionary<string, IReadOnlyList<string>>(StringComparer.Ordinal);
        if (eligibility.OptionalMap("requires", "'requires'") is not { } map)
            return requires;
        foreach (var name in map.Keys)
        {
            var allowed = map.Texts(name);
            if (!dictionary.TryGet(name, out var variable))
                map.Note(DeclarationMessages.VariableUnknown(map.PlaceOf(name), name, dictionary));
            else if (variable.Level != VariableLevel.Participant)
                map.Note(DeclarationMessages.LevelNotParticipant(map.PlaceOf(name), name));
            else if (allowed.FirstOrDefault(word => !variable.Words.Contains(word)) is { } unknown)
                map.Note(Messages.WordUnknown(map.PlaceOf(name), name, unknown, variable.Words));
            else
                requires[name] = allowed;
        }

        map.Done();
        return requires;
    }

    public PlannedPlayers? Players()
    {
        if (root.OptionalMap("players", "'players'") is not { } map)
            return null;
        var players = new PlannedPlayers(map.Count("planned", 1, "number of players"), map.Text("why", Reason));
        map.Done();
        return players;
    }

    public IReadOnlyList<OutcomeMeasure> Outcomes() =>
        [.. root.Maps("outcomes", "outcome", "variable").Select(Outcome).OrderBy(outcome => outcome.Role)];

    public IReadOnlyList<Contrast> Contrasts() => [.. root.Maps("contrasts", "contrast", "name").Select(map =>
    {
        var contrast = new Contrast(
            Names.Kebab(map, "name", "after-cue"),
            map.Text("from", "the phase before"),
            map.Text("to", "the phase after")) { Line = map.LineOf("name") };
        map.Done();
        return contrast;
    })];

    public IReadOnlyList<CurvePlan> Curves() => [.. root.Maps("curves", "curve", "channel").Select(map =>
    {
        var curve = new CurvePlan(Names.Snake(map, "channel", "total_force_y"), map.Texts("contrasts")) { Line = map.LineOf("channel") };
        map.Done();
        return curve;
    })];

    public IReadOnlyList<ScreeningRule> Screening() => [.. root.Maps("screening", "screening rule", "rule").Select(map =>
    {
        var kind = map.WordOf("rule", [.. ScreeningRuleKind.All.Select(candidate => candidate.Name)]);
        var rule = new ScreeningRule(
            kind,
            Variables(map, "variables"),
            map.Choice<ScreeningAction>("action", "what it does with what it finds"),
            Settings(map, kind),
            map.Text("why", Reason)) { Line = map.LineOf("rule") };
        map.Done();
        return rule;
    })];

    public SignalPlan Signals()
    {
        var plan = new SignalPlan();
        if (root.OptionalMap("signals", "'signals'") is not { } map)
            return plan;
        plan = new()
        {
            ForceCutoffHz = Size(map, "force_cutoff_hz", plan.ForceCutoffHz, 1, 500),
            BodyCutoffHz = Size(map, "body_cutoff_hz", plan.BodyCutoffHz, 1, 100),
            HandWindowS = Size(map, "hand_window_s", plan.HandWindowS, 0.01, 0.3),
            ClubWindowS = Size(map, "club_window_s", plan.ClubWindowS, 0.01, 0.3),
            BodyGapS = Size(map, "body_gap_s", plan.BodyGapS, 0, 1),
            ClubGapS = Size(map, "club_gap_s", plan.ClubGapS, 0, 0.2),
            QuietS = Size(map, "quiet_s", plan.QuietS, 0.1, 10),
            StillMps = Size(map, "still_m_s", plan.StillMps, 0.01, 1),
            MovingMps = Size(map, "moving_m_s", plan.MovingMps, 0.05, 5),
            TopShare = Size(map, "top_share", plan.TopShare, 0.05, 0.95),
            Why = map.Text("why", Reason),
        };
        map.Done();
        return plan;
    }

    public AnalysisPlan Analysis()
    {
        var plan = new AnalysisPlan();
        if (root.OptionalMap("analysis", "'analysis'") is not { } map)
            return plan;
        var measures = map.Texts("measures");
        foreach (var measure in measures.Where(measure => !Measures.Contains(measure)))
            map.Note(Messages.WordUnknown(map.PlaceOf("measures"), "measures", measure, Measures));
        plan = new()
        {
            Measures = measures.Count > 0 ? measures : plan.Measures,
            Confidence = map.OptionalNumber("confidence") ?? plan.Confidence,
            Resamples = map.OptionalCount("resamples", 100) ?? plan.Resamples,
            Seed = map.OptionalSeed("seed") ?? plan.Seed,
            Multiplicity = map.OptionalWordOf("multiplicity", Adjustments) ?? plan.Multiplicity,
            Standardizer = map.OptionalWordOf("standardizer", Standardizers) ?? plan.Standardizer,
            Why = map.Text("why", Reason),
        };
        map.Done();
        if (plan.Confidence is not (>= 0.5 and < 1))
            map.Note(Messages.OutOfRange(map.PlaceOf("confidence"), "confidence", plan.Confidence, "a share from 0.5 to below 1, such as 0.95"));
        return plan;
    }

    public Blinding? Blinding()
    {
        const string key = "blinding";
        if (!root.HasGroup(key))
            return root.OptionalText(key) is { } words ? new(false, words) : null;
        var map = root.OptionalMap(key, "'blinding'")!;
        var blinding = new Blinding(
            map.WordOf("analyst", [Protocols.Blinding.Masked, Protocols.Blinding.Open]) == Protocols.Blinding.Masked,
            map.Text("how", "who is blind to what, in a sentence"));
        map.Done();
        return blinding;
    }

    public DesignStandard Standard() =>
        root.OptionalWordOf("standard", [.. DesignStandard.All.Select(standard => standard.Name)]) is { } name ? DesignStandard.Find(name)! : DesignStandard.Default;

    public IReadOnlyList<StopRule> StopRules() => StopRuleReader.Read(root, dictionary);

    public IReadOnlyList<string> Variables(YamlMap map, string key)
    {
        var names = map.Texts(key);
        foreach (var name in names.Where(name => !dictionary.TryGet(name, out _)))
            map.Note(DeclarationMessages.VariableUnknown(map.PlaceOf(key), name, dictionary));
        return names;
    }

    private OutcomeMeasure Outcome(YamlMap map)
    {
        var variable = Variable(map, "variable");
        var outcome = new OutcomeMeasure(
            variable?.Name ?? "",
            map.Choice<OutcomeRole>("role", "what the outcome is for"),
            Worthwhile(map, variable),
            map.Texts("contrasts")) { Noise = Noise(map, variable), Line = map.LineOf("variable") };
        map.Done();
        return outcome;
    }

    /// <summary>A number of 'signals' within its range, or the default.</summary>
    private static double Size(YamlMap map, string name, double usual, double least, double most)
    {
        var value = map.OptionalNumber(name) ?? usual;
        if (!(value >= least && value <= most))
            map.Note(Messages.OutOfRange(map.PlaceOf(name), name, value, string.Create(CultureInfo.InvariantCulture, $"a number from {least} to {most}")));
        return value;
    }

    private static ExpectedNoise? Noise(YamlMap outcome, Variable? variable)
    {
        if (outcome.OptionalMap("noise", "'noise' of " + outcome.Subject) is not { } map)
            return null;
        var factor = Factor(map, variable);
        var noise = new ExpectedNoise(
            factor * Deviation(map, "session", "standard deviation from session to session"),
            factor * Deviation(map, "swing", "standard deviation from swing to swing within a session"),
            map.Text("basis", "where the numbers come from, in a sentence"));
        map.Done();
        return noise;
    }

    private static double Deviation(YamlMap map, string key, string meaning)
    {
        var deviation = map.Number(key, meaning);
        if (deviation < 0)
            map.Note(Messages.OutOfRange(map.PlaceOf(key), key, deviation, "a standard deviation of 0 or more"));
        return deviation;
    }

    private static double Factor(YamlMap map, Variable? variable) =>
        map.Has("unit") && variable is not null && UnitReader.Read(map, variable) is { } unit
            ? UnitConversion.Between(unit, UnitCatalogue.ParseCode(variable.Unit!)!)!.Value.Factor
            : 1;

    private Variable? Variable(YamlMap map, string key)
    {
        var name = map.Text(key, "a variable of the dictionary");
        if (dictionary.TryGet(name, out var variable) || name.Length == 0)
            return variable;
        map.Note(DeclarationMessages.VariableUnknown(map.PlaceOf(key), name, dictionary));
        return null;
    }

    private static WorthwhileChange? Worthwhile(YamlMap outcome, Variable? variable)
    {
        if (outcome.OptionalMap("smallest_worthwhile", "'smallest_worthwhile' of " + outcome.Subject) is not { } map)
            return null;
        var amount = map.Number("amount", "the size of the change");
        var change = new WorthwhileChange(amount * Factor(map, variable), map.WordOf("basis", WorthwhileBases), map.Text("reason", Reason));
        map.Done();
        if (amount <= 0)
            map.Note(Messages.OutOfRange(map.PlaceOf("amount"), "amount", amount, "a size above 0; the direction is the dictionary's 'better'"));
        return change;
    }

    private static Dictionary<string, double> Settings(YamlMap rule, string kindName)
    {
        var settings = new Dictionary<string, double>(StringComparer.Ordinal);
        if (rule.OptionalMap("settings", "'settings' of " + rule.Subject) is not { } map || ScreeningRuleKind.Find(kindName) is not { } kind)
            return settings;
        foreach (var setting in kind.Settings)
        {
            if (map.OptionalNumber(setting.Name) is not { } value)
                continue;
            settings[setting.Name] = value;
            if (value < setting.Least || value > setting.Most)
            {
                map.Note(Messages.OutOfRange(
                    map.PlaceOf(setting.Name),
                    setting.Name,
                    value,
                    string.Create(CultureInfo.InvariantCulture, $"{setting.Meaning}, from {setting.Least} to {setting.Most}")));
            }
        }

        map.Done();
        return settings;
    }
}

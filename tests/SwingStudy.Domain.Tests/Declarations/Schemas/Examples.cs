using SwingStudy.Domain.Tests.Declarations.Support;

namespace SwingStudy.Domain.Tests.Declarations.Schemas;

/// <summary>Small valid declarations, and each broken in one way: what changed, the text, and whether it is valid.</summary>
public static class Examples
{
    private const string Mapping = """
        source: bay-strike
        title: Sensor
        device: bay1
        rows: swings
        reader: delimited
        files: 'bay_(?<day>\d+)\.csv'
        text: { encoding: utf-8, delimiter: ';', decimal: ',' }
        layout: { preamble: 3, headings: 1, units_row: true }
        missing: ['---']
        not_data:
          - { label: average, when: [{ column: No, is: [Average] }] }
        participant: { column: Player }
        time: { parts: [{ column: When }], format: dd.MM.yyyy HH:mm:ss, zone: Europe/Lisbon }
        values:
          ball_speed: { column: Ball speed, unit: mph, scale: 1 }
          surface: { column: Ground, words: { Gras: turf } }
        """;

    private const string Study = "name: Autumn\nzone: Europe/Lisbon\ndictionary: data-dictionary\npreferred_sources: [bay-strike]\n";

    private const string Dictionary = "name: n\nversion: 1.0.0\ngroups: [g]\nnotes:\n  - { version: 1.0.0, changes: [First.] }\n";

    private const string Group = """
        title: G
        description: A group.
        variables:
          - name: ball_speed
            title: Ball speed
            description: Speed.
            type: number
            unit: m/s
            display_unit: '[mi_i]/h'
            constraints: { minimum: 0, maximum: 100, basis: flag only }
            typical: { low: 30, high: 80, basis: flag only }
            better: higher
            synonyms: [speed]
            zero_is_missing: true
          - name: path
            title: Path
            description: Path.
            type: number
            unit: deg
            better: nearer-target
            target: 0
            scale: interval
          - name: surface
            title: Surface
            description: Surface.
            type: string
            constraints: { enum: [mat, turf] }
        """;

    private static string Protocol { get; } = File.ReadAllText(Path.Combine(Repository.ProtocolFolder, "cue-multiple-baseline.yaml"));

    public static TheoryData<string, string, bool> Mappings => Table(
        Mapping,
        ("rows: swings", "rows: swing"),
        ("source: bay-strike", "source: Bay Strike"),
        ("title: Sensor\n", ""),
        ("title: Sensor", "title: 5"),
        ("reader: delimited", "reader: csv"),
        ("delimiter: ';'", "delimiter: ';;'"),
        ("decimal: ','", "decimal: ';'"),
        ("preamble: 3", "preamble: -1"),
        ("preamble: 3", "preamble: three"),
        ("headings: 1", "headings: 3"),
        ("units_row: true", "units_row: yes"),
        ("missing: ['---']", "missing: '---'"),
        ("is: [Average]", "are: [Average]"),
        (", when: [{ column: No, is: [Average] }]", ""),
        (", is: [Average]", ""),
        ("participant: { column: Player }", "participant: { column: Player, constant: P01 }"),
        ("participant: { column: Player }", "participant: {}"),
        ("participant: { column: Player }", "participant: Player"),
        ("parts: [{ column: When }]", "parts: []"),
        (", zone: Europe/Lisbon", ""),
        ("format: dd.MM.yyyy HH:mm:ss", "format: DD.MM.YYYY"),
        ("scale: 1", "scale: '1'"),
        ("scale: 1", "scael: 1"),
        ("scale: 1", "mirror: left"),
        ("scale: 1", "signs: { L: left }"),
        ("scale: 1", "decimal: ';'"),
        ("words: { Gras: turf }", "words: { Gras: 1 }"),
        ("not_data:", "window: { from_s: -1, to_s: 0 }\nnot_data:"),
        ("not_data:", "phase: { column: Phase }\nnot_data:"),
        ("rows: swings", "rows: moments"),
        ("participant: { column: Player }\n", "long: { name: Reading }\n"));

    public static TheoryData<string, string, bool> Protocols => Table(
        Protocol,
        ("design: multiple-baseline", "design: staggered"),
        ("version: 1.0.0", "version: 1.0"),
        ("minimum_sessions: 5", "minimum_sessions: 0"),
        ("minimum_sessions: 5", "minimum_sessions: 2.5"),
        ("role: baseline", "role: before"),
        ("kind: order", "kind: ordered"),
        ("stagger: 3", "stagger: -3"),
        ("stagger: 3", "longest_run: 0"),
        ("analyst: masked", "analyst: blind"),
        ("analyst: masked\n", "analist: masked\n"),
        ("design: multiple-baseline", "design: multiple-baseline\nstandard: handbook-9"),
        ("role: primary\n", "role: primary\n    noise: { session: -1, swing: 1, basis: Reason. }\n"),
        ("role: primary\n", "role: primary\n    noise: { session: 1, swing: 1 }\n"),
        ("seed: 1618033988", "seed: -1"),
        ("age_of_majority: 18", "age_of_majority: eighteen"),
        ("amount: 2.7", "amount: 0"),
        ("basis: stated", "basis: felt"),
        ("action: keep", "action: delete"),
        ("rule: impossible", "rule: implausible"),
        ("settings: { limit: 3.5", "settings: { limt: 3.5"),
        ("settings: { limit: 3.5", "settings: { limit: 0.5"),
        ("maximum: 1.56", "maximum: 15.6"),
        ("confidence: 0.95", "confidence: 95"),
        ("resamples: 10000", "resamples: 10"),
        ("multiplicity: holm", "multiplicity: bonferoni"),
        ("measures: [difference,", "measures: [delta,"),
        ("standardizer: pooled", "standardizer: control"),
        ("at_least: 3, rise: 2, ", ""),
        ("contrasts:\n", "contrast:\n"),
        ("contrasts:\n", "curves: [{ channel: Total force }]\ncontrasts:\n"),
        ("contrasts:\n", "curves: [{ contrasts: [with-cue] }]\ncontrasts:\n"),
        ("contrasts:\n", "curves: [{ channel: total_force_y, contrast: with-cue }]\ncontrasts:\n"),
        ("players: { planned: 4", "players: { planned: 0"));

    public static TheoryData<string, string, bool> Studies => Table(
        Study,
        ("name: Autumn\n", ""),
        ("zone: Europe/Lisbon\n", ""),
        ("preferred_sources: [bay-strike]", "preferred_sources: bay-strike"),
        ("preferred_sources: [bay-strike]", "preferred_sources: [Bay Strike]"),
        ("dictionary:", "dictionnary:"));

    public static TheoryData<string, string, bool> Dictionaries => Table(
        Dictionary,
        ("name: n\n", ""),
        ("version: 1.0.0\n", "version: 1.0\n"),
        ("groups: [g]\n", "groups: []\n"),
        ("groups: [g]\n", "groups: g\n"),
        ("changes: [First.]", "changes: First."),
        ("notes:", "note:"));

    public static TheoryData<string, string, bool> VariableGroups => Table(
        Group,
        ("name: ball_speed", "name: Ball speed"),
        ("type: number\n    unit: m/s", "type: decimal\n    unit: m/s"),
        ("    unit: m/s\n", ""),
        ("minimum: 0, ", "minimum: none, "),
        (", basis: flag only }\n    typical", " }\n    typical"),
        ("typical: { low: 30, high: 80, basis: flag only }", "typical: { low: 30, high: 80 }"),
        ("typical: { low: 30, high: 80, basis: flag only }", "typical: [30, 80]"),
        ("better: higher", "better: more"),
        ("    target: 0\n", ""),
        ("better: higher", "better: higher\n    target: 3"),
        ("scale: interval", "scale: linear"),
        ("constraints: { enum: [mat, turf] }", "constraints: { enum: [mat, turf] }\n    unit: m"),
        ("zero_is_missing: true", "zero_is_missing: 'true'"),
        ("synonyms: [speed]", "synonyms: speed"),
        ("description: Speed.\n", "descripton: Speed.\n"));

    /// <summary>The mapping with one text in place of another.</summary>
    public static string MappingWith(string from, string to) => Mapping.Contains(from, StringComparison.Ordinal) ? Mapping.Replace(from, to, StringComparison.Ordinal) : throw new ArgumentException($"'{from}' does not stand in the example.", nameof(from));

    private static TheoryData<string, string, bool> Table(string valid, params (string From, string To)[] breaks)
    {
        var table = new TheoryData<string, string, bool> { { "as it is", valid, true } };
        foreach (var (from, to) in breaks)
        {
            var position = valid.IndexOf(from, StringComparison.Ordinal);
            if (position < 0)
                throw new InvalidOperationException($"'{from}' does not stand in the example.");
            table.Add($"{from} -> {to}", valid[..position] + to + valid[(position + from.Length)..], false);
        }

        return table;
    }
}

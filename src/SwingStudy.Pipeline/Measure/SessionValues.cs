using System.Text.Json;
using SwingStudy.Domain.Tables;
using SwingStudy.Storage.Registry;

namespace SwingStudy.Pipeline.Measure;

/// <summary>What the registry says of a session, by variable name; it holds for each of its swings where no device says otherwise.</summary>
internal sealed class SessionValues
{
    private readonly Dictionary<string, JsonElement> _values = new(StringComparer.Ordinal);

    public SessionValues(SessionRecord session)
    {
        using var document = JsonDocument.Parse(session.Variables);
        foreach (var member in document.RootElement.EnumerateObject())
            _values[member.Name] = member.Value.Clone();
        Add("club", session.Club);
        Add("ball", session.Ball);
        Add("surface", session.Surface);
        Add("site", session.Site);
        Add("cue", session.Cue);
        Add("note", session.Note);
        Add("planned_swings", session.PlannedSwings);
    }

    /// <summary>The same value for each swing; missing where the session says nothing or something of another kind.</summary>
    public Column Column(ColumnDefinition column, int swings) =>
        _values.TryGetValue(column.Name, out var value) ? Filled(column.Kind, value, swings) : Domain.Tables.Column.Missing(column.Kind, swings);

    private static Column Filled(ColumnKind kind, JsonElement value, int swings) => (kind, value.ValueKind) switch
    {
        (ColumnKind.Text, JsonValueKind.String) => new TextColumn([.. Enumerable.Repeat(value.GetString(), swings)]),
        (ColumnKind.Number, JsonValueKind.Number) => new NumberColumn([.. Enumerable.Repeat(value.GetDouble(), swings)]),
        (ColumnKind.Integer, JsonValueKind.Number) when value.TryGetInt64(out var whole) => new IntegerColumn([.. Enumerable.Repeat<long?>(whole, swings)]),
        (ColumnKind.Boolean, JsonValueKind.True or JsonValueKind.False) => new BooleanColumn([.. Enumerable.Repeat<bool?>(value.GetBoolean(), swings)]),
        _ => Domain.Tables.Column.Missing(kind, swings),
    };

    private void Add(string name, object? value)
    {
        if (value is not null)
            _values[name] = JsonSerializer.SerializeToElement(value);
    }
}

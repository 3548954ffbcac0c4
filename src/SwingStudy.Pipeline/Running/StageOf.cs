using System.Text.Json;
using System.Text.Json.Serialization;
using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;

namespace SwingStudy.Pipeline.Running;

/// <summary>A stage that sees settings of one type.</summary>
/// <typeparam name="TSettings">A record; its JSON form is part of what the stage depends on.</typeparam>
internal abstract class Stage<TSettings> : Stage
    where TSettings : notnull
{
    /// <summary>A number that is not declared is NaN, such as the place of a plate that its file tells.</summary>
    private static readonly JsonSerializerOptions Json = new() { NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals };

    internal override BoundStage Bind(StudySetup setup)
    {
        var settings = SettingsOf(setup);
        var tables = StudyTables.All(setup.Dictionary).ToDictionary(table => table.Name, StringComparer.Ordinal);
        return new BoundStage(
            Declaration,
            [.. Declaration.Inputs.Select(input => new BoundInput(tables[input.Table], input.Slice, ColumnsOf(input.Table, settings)))],
            Declaration.Outputs.ToDictionary(name => name, name => tables[name], StringComparer.Ordinal),
            JsonSerializer.Serialize(settings, Json),
            input => Run(settings, input));
    }

    /// <summary>The settings it may see.</summary>
    protected abstract TSettings SettingsOf(StudySetup setup);

    /// <summary>Columns it reads of an input table; all when null.</summary>
    protected virtual IReadOnlyList<string>? ColumnsOf(string table, TSettings settings) => null;

    /// <summary>Does one unit of work.</summary>
    /// <returns>Rows of output tables; tables without rows may be left out.</returns>
    protected abstract IReadOnlyList<RowSet> Run(TSettings settings, StageInput input);
}

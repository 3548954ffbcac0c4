using System.Text.Json;
using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;

namespace SwingStudy.Pipeline.Running;

/// <summary>A stage that sees settings of one type.</summary>
/// <typeparam name="TSettings">A record that <see cref="SettingsJson"/> names; its JSON form is part of what the stage depends on.</typeparam>
internal abstract class Stage<TSettings> : Stage
    where TSettings : notnull
{
    internal override BoundStage Bind(StudySetup setup)
    {
        var settings = SettingsOf(setup);
        var tables = StudyTables.All(setup.Dictionary).ToDictionary(table => table.Name, StringComparer.Ordinal);
        return new BoundStage(
            Declaration,
            [.. Declaration.Inputs.Select(input => new BoundInput(tables[input.Table], input.Slice, ColumnsOf(input.Table, settings)))],
            Declaration.Outputs.ToDictionary(name => name, name => tables[name], StringComparer.Ordinal),
            JsonSerializer.Serialize(settings, typeof(TSettings), SettingsJson.Default),
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

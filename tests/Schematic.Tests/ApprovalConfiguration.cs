using ApprovalTests.Namers;
using ApprovalTests.Reporters;
using ApprovalTests.Reporters.TestFrameworks;

[assembly: UseReporter(typeof(XUnit2Reporter))]
[assembly: UseApprovalSubdirectory("Approved")]

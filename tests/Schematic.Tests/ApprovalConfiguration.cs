using ApprovalTests.Namers;
using ApprovalTests.Reporters;

[assembly: UseReporter(typeof(XUnit2Reporter))]
[assembly: UseApprovalSubdirectory("Approved")]
